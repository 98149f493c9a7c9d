import { useRoute } from 'preact-iso';
import { useState } from 'preact/hooks';
import { SignForm } from '../acts/sign-form.js';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { Choice, Field } from '../shell/fields.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { withOffset } from '../words/time.js';

type View = Schemas['RecurrenceView'];

/** The write-ups that are alike, side by side; maintenance control decides what they are. */
export function RecurrencePage() {
  const { id = '' } = useRoute().params;
  const { operator } = useSession();
  const read = useRead<View>(`/defects/${id}/recurrence`);
  const number = read.value?.number ?? 'The item';
  return (
    <Page title="Seen before" aside={number} back={{ href: `/defects/${id}`, text: number }}>
      <Read of={read}>
        {(view) => (
          <>
            <p class="strong">
              {view.repetitive ? 'Repetitive by the rule' : 'Not repetitive by the rule'}: {view.times} of {view.rule}
              .
            </p>
            <ul class="plain-list side-by-side">
              {view.writeUps.map((one, index) => (
                <li key={one.defect} class="card">
                  <WriteUp one={one} own={index === 0} />
                </li>
              ))}
            </ul>
            {view.decided.map(({ repetitive, reason, by, at }) => (
              <p key={at}>
                {by}, {withOffset(at, operator.base)}: {repetitive ? 'repetitive' : 'not repetitive'}. {reason}
              </p>
            ))}
            <Decision view={view} seen={read.etag} readAgain={() => void read.readAgain()} />
          </>
        )}
      </Read>
    </Page>
  );
}

const ALIKE: Record<string, string> = {
  entry: 'same entry',
  position: 'same position',
  system: 'same system (ATA chapter)',
  message: 'same message',
};

function WriteUp({ one, own }: { one: View['writeUps'][number]; own: boolean }) {
  const { operator } = useSession();
  return (
    <>
      <h2>
        <a href={`/defects/${one.defect}`}>{one.number}</a> {own && 'this one'}
      </h2>
      <p class="soft">In the log {withOffset(one.recordedAt, operator.base)}</p>
      <p>{one.description}</p>
      {one.faultMessage && <p>Message: {one.faultMessage}</p>}
      <p>
        {one.entry ? `${one.entry}, unit ${one.units.join(' or ')}` : 'No entry named'}
        {one.system && `, system ${one.system}`}
      </p>
      <p class="strong">{one.state}</p>
      {one.work.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {!own && (
        <p class="soft">
          Alike: {one.alikeBy.map((by) => ALIKE[by] ?? by).join(', ')}
          {!one.certain && '. How much was flown in between is not known, so it counts'}
        </p>
      )}
    </>
  );
}

const ANSWERS = [
  { value: 'yes', text: 'It is a repetitive defect' },
  { value: 'no', text: 'It is not' },
] as const;

function Decision({ view, seen, readAgain }: { view: View; seen: string | null; readAgain(): void }) {
  const { roles } = useSession();
  const [answer, setAnswer] = useState<'yes' | 'no' | null>(null);
  const [reason, setReason] = useState('');
  if (!roles.includes('maintenance-control')) return <p class="soft">Maintenance control decides.</p>;
  const at = `/defects/${view.defect}/recurrence`;
  return (
    <SignForm<Schemas['RecurrenceDecided']>
      statementPath={answer === null ? null : `${at}/statement?answer=${answer}`}
      path={at}
      seen={seen}
      readAgain={readAgain}
      body={() => ({ repetitive: answer === 'yes', reason })}
      button="Sign: decided"
      done={() => {
        setAnswer(null);
        setReason('');
        readAgain();
      }}
    >
      <Choice legend="Your decision" options={ANSWERS} value={answer} onValue={setAnswer} />
      <Field
        label="Why, and what is done about it"
        lines={3}
        most={2000}
        value={reason}
        onValue={setReason}
        pointer="/reason"
        required
      />
    </SignForm>
  );
}
