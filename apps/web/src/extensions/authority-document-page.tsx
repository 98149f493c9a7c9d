import { useLocation, useRoute } from 'preact-iso';
import { useState } from 'preact/hooks';
import { SignForm } from '../acts/sign-form.js';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { useSession } from '../session/session.js';
import { carryOver } from '../shell/announce.js';
import { Choice, Field } from '../shell/fields.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { instantOf, NO_WALL, WallInput } from '../shell/wall-input.js';
import { itemName } from '../words/words.js';

const KINDS = [
  { value: 'permit', text: 'A permit to fly' },
  { value: 'authority-document', text: 'Another document of the authority' },
] as const;
const FLIGHTS = [
  { value: 'any', text: 'It names no kind of flight' },
  { value: 'ferry', text: 'Ferry flights alone' },
] as const;

/** What an authority allows beyond the deadline, entered as its document reads. It moves no deadline. */
export function AuthorityDocumentPage() {
  const { id = '' } = useRoute().params;
  const item = useRead<Schemas['DefectView']>(`/defects/${id}`);
  const line = item.value?.defect;
  return (
    <Page
      title="A document of the authority"
      aside={line && itemName(line)}
      back={{ href: `/defects/${id}`, text: line?.number ?? 'The item' }}
    >
      <p>
        Enter what it says and no more. It carries the flights it covers and no others; the deadline stays where it
        is.
      </p>
      <Read of={item}>{() => <DocumentForm id={id} seen={item.etag} readAgain={() => void item.readAgain()} />}</Read>
    </Page>
  );
}

interface DocumentFormProps {
  id: string;
  seen: string | null;
  readAgain(): void;
}

function DocumentForm({ id, seen, readAgain }: DocumentFormProps) {
  const { operator } = useSession();
  const { route } = useLocation();
  const [kind, setKind] = useState<(typeof KINDS)[number]['value']>('permit');
  const [told, setTold] = useState({ number: '', authority: '', limit: '', conditions: '', flights: '' });
  const [from, setFrom] = useState(NO_WALL);
  const [until, setUntil] = useState(NO_WALL);
  const [flown, setFlown] = useState<(typeof FLIGHTS)[number]['value']>('any');
  const field = (key: keyof typeof told) => ({
    value: told[key],
    onValue: (value: string) => setTold({ ...told, [key]: value }),
    pointer: `/${key}`,
  });

  function body(): object {
    const { conditions, flights, ...said } = told;
    const lines = conditions.split('\n').filter((one) => one.trim() !== '');
    return {
      kind,
      ...said,
      from: instantOf(from, operator.base),
      until: instantOf(until, operator.base),
      ...(lines.length === 0 ? {} : { conditions: lines }),
      ...(flights === '' ? {} : { flights: Number(flights) }),
      ...(flown === 'any' ? {} : { kindsOfFlight: [flown] }),
    };
  }

  return (
    <SignForm<Schemas['ActDone']>
      statementPath={`/defects/${id}/statement?act=enter-document`}
      path={`/defects/${id}/authority-document`}
      seen={seen}
      readAgain={readAgain}
      body={body}
      button="Sign: entered as it reads"
      done={() => {
        carryOver({ title: 'The document is entered. The deadline has not moved.', lines: [] });
        route(`/defects/${id}`);
      }}
    >
      <Choice legend="What it is" options={KINDS} value={kind} onValue={setKind} />
      <Field label="Its number" most={80} required {...field('number')} />
      <Field label="Which authority" most={200} required {...field('authority')} />
      <Field label="Its limit, in its own terms" lines={2} most={1000} required {...field('limit')} />
      <Field label="Its other conditions" hint="One in each line" lines={2} most={1000} {...field('conditions')} />
      <WallInput what="from which it is good" zone={operator.base} value={from} onValue={setFrom} pointer="/from" />
      <WallInput what="at which it ends" zone={operator.base} value={until} onValue={setUntil} pointer="/until" />
      <Field
        label="How many flights"
        hint="Left empty where it names no number"
        inputMode="numeric"
        most={4}
        short
        {...field('flights')}
      />
      <Choice legend="Which flights" options={FLIGHTS} value={flown} onValue={setFlown} />
    </SignForm>
  );
}
