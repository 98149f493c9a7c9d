import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useAct } from '../api/use-act.js';
import { useSession } from '../session/session.js';
import { announce } from '../shell/announce.js';
import { Field, FieldErrors } from '../shell/fields.js';
import { ProblemBox } from '../shell/problem-box.js';
import { withOffset } from '../words/time.js';
import { FitFields, fitSent } from './fit-fields.js';

type Entry = Schemas['AircraftEntry'];

interface AircraftEntryProps {
  entry: Entry;
  view: Schemas['AircraftEntries'];
  may: boolean;
  changed(): Promise<void>;
}

/** One aircraft as it was entered, and what may be done with it. */
export function AircraftEntry({ entry, view, may, changed }: AircraftEntryProps) {
  const { operator } = useSession();
  const { id, registration, type, serial, configuration, base, retiredAt, version } = entry;
  const known = view.types.find((one) => one.type === type);
  return (
    <>
      <h2>
        <a class="registration" href={`/aircraft/${id}`}>
          {registration}
        </a>{' '}
        {type}
      </h2>
      <p>
        Serial {serial ?? 'not known'}; configuration {codeWords(configuration)}
        {base !== null && `; based at ${base}`}. {known?.mel ?? 'No MEL is loaded for its type: it cannot be judged.'}
      </p>
      {retiredAt !== null && <p class="strong">Out of the fleet since {withOffset(retiredAt, operator.base)}.</p>}
      {may && retiredAt === null && (
        <>
          <FitForm key={version} entry={entry} view={view} changed={changed} />
          <ServiceForm
            entry={entry}
            title={`${registration} leaves the fleet`}
            about="Only once nothing is open on it, left on it or planned for it. Its history stays."
            path="retirement"
            changed={changed}
          />
        </>
      )}
      {may && retiredAt !== null && (
        <ServiceForm
          entry={entry}
          title={`${registration} comes back`}
          about="It is offered again to everybody, as it left."
          path="return"
          changed={changed}
        />
      )}
    </>
  );
}

function codeWords(configuration: Entry['configuration']): string {
  if (configuration === null) return 'not known';
  return configuration.length === 0 ? 'none of those in the MEL' : configuration.join(', ');
}

function FitForm({ entry, view, changed }: Omit<AircraftEntryProps, 'may'>) {
  const [fit, setFit] = useState({
    serial: entry.serial === null ? '' : String(entry.serial),
    configuration: (entry.configuration ?? []).join(', '),
    known: entry.configuration !== null,
    base: entry.base ?? '',
  });
  const [reason, setReason] = useState('');
  const { send, sending, problem } = useAct();
  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const body = { ...fitSent(fit), reason };
    const seen = `"${entry.version}"`;
    if (!(await send({ method: 'PUT', path: `/aircraft/${entry.id}/fit`, body, seen }))) return;
    announce(`${entry.registration} is changed.`);
    await changed();
  }
  const codes = view.types.find((one) => one.type === entry.type)?.configurations ?? [];
  return (
    <details>
      <summary>Change what is fitted to {entry.registration}</summary>
      <form onSubmit={(event) => void submit(event)}>
        <FieldErrors.Provider value={problem?.errors ?? []}>
          <FitFields fit={fit} onFit={setFit} codes={codes} stations={view.stations} />
          <Field
            label="Why, for the record"
            value={reason}
            onValue={setReason}
            pointer="/reason"
            most={300}
            required
          />
        </FieldErrors.Provider>
        <ProblemBox problem={problem} readAgain={() => void changed()} />
        <div class="buttons">
          <button class="main" disabled={sending}>
            Change {entry.registration}
          </button>
        </div>
      </form>
    </details>
  );
}

interface ServiceFormProps {
  entry: Entry;
  title: string;
  about: string;
  path: 'retirement' | 'return';
  changed(): Promise<void>;
}

function ServiceForm({ entry, title, about, path, changed }: ServiceFormProps) {
  const [reason, setReason] = useState('');
  const { send, sending, problem } = useAct();
  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const act = { method: 'POST', path: `/aircraft/${entry.id}/${path}`, body: { reason } } as const;
    if (!(await send({ ...act, seen: `"${entry.version}"` }))) return;
    announce(`${title}: entered.`);
    await changed();
  }
  return (
    <details>
      <summary>{title}</summary>
      <form onSubmit={(event) => void submit(event)}>
        <p>{about}</p>
        <FieldErrors.Provider value={problem?.errors ?? []}>
          <Field
            label="Why, for the record"
            value={reason}
            onValue={setReason}
            pointer="/reason"
            most={300}
            required
          />
        </FieldErrors.Provider>
        <ProblemBox problem={problem} readAgain={() => void changed()} />
        <div class="buttons">
          <button class="main" disabled={sending}>
            Enter: {title}
          </button>
        </div>
      </form>
    </details>
  );
}
