import { useLocation, useRoute } from 'preact-iso';
import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { SignForm } from '../acts/sign-form.js';
import { useSession } from '../session/session.js';
import { carryOver } from '../shell/announce.js';
import { Choice, Field } from '../shell/fields.js';
import { Page } from '../shell/page.js';
import { Read } from '../shell/reading.js';
import { useSettled } from '../shell/use-settled.js';
import { ConcurrencePart } from './concurrence-part.js';
import { instantOf, NO_WALL, WallInput } from '../shell/wall-input.js';

/** `words` is how the server names the kind in the statement that is signed. */
const KINDS = [
  { value: 'cdl', text: 'CDL', words: 'CDL' },
  { value: 'nef', text: 'NEF', words: 'NEF' },
  { value: 'approved-data', text: 'A limit in approved data', words: 'approved data' },
  { value: 'design-approval', text: 'A design approval or concession', words: 'design approval' },
  { value: 'permit', text: 'A permit to fly', words: 'permit' },
  { value: 'authority-document', text: 'A document of the authority', words: 'authority document' },
] as const;

type Kind = (typeof KINDS)[number]['value'];

/** Defers on a basis that is no MEL row: its reference, who issued it, and its own limit. */
export function DocumentPage() {
  const { id = '' } = useRoute().params;
  const defect = useRead<Schemas['DefectView']>(`/defects/${id}`);
  return (
    <Page
      title="Defer on another document"
      back={{ href: `/defects/${id}`, text: defect.value?.defect.number ?? 'The item' }}
    >
      <Read of={defect}>
        {(view) => (
          <>
            <p>{view.defect.description}</p>
            <DocumentForm id={id} view={view} seen={defect.etag} readAgain={() => void defect.readAgain()} />
          </>
        )}
      </Read>
    </Page>
  );
}

interface DocumentFormProps {
  id: string;
  view: Schemas['DefectView'];
  seen: string | null;
  readAgain(): void;
}

function DocumentForm({ id, view, seen, readAgain }: DocumentFormProps) {
  const { route } = useLocation();
  const { operator } = useSession();
  const [kind, setKind] = useState<Kind | null>(null);
  const [reference, setReference] = useState('');
  const [issuedBy, setIssuedBy] = useState('');
  const [limit, setLimit] = useState('');
  const [interval, setInterval] = useState('');
  const [until, setUntil] = useState(NO_WALL);
  const untilAt = instantOf(until, operator.base);
  const words = KINDS.find(({ value }) => value === kind)?.words;
  const document = useSettled(words !== undefined && reference.trim() !== '' ? `${words} ${reference}` : '');
  const asked = new URLSearchParams({ act: 'defer', document }).toString();
  const body = {
    document: {
      kind,
      reference,
      issuedBy,
      limit,
      ...(interval.trim() === '' ? {} : { interval }),
      ...(untilAt === null ? {} : { until: untilAt }),
    },
  };

  return (
    <>
      <SignForm<Schemas['ActDone']>
        statementPath={document === '' ? null : `/defects/${id}/statement?${asked}`}
        path={`/defects/${id}/deferral`}
        seen={seen}
        body={() => body}
        button="Sign: defer"
        done={({ defect }) => {
          carryOver({
            title: `Deferred under ${defect.basis ?? 'the document'}.`,
            lines: [],
          });
          route(`/defects/${id}`);
        }}
        readAgain={readAgain}
      >
        <Choice legend="Which kind" options={KINDS} value={kind} onValue={setKind} />
        <Field
          label="Number or manual reference, with revision"
          value={reference}
          onValue={setReference}
          pointer="/document/reference"
          required
        />
        <Field label="Issued by" value={issuedBy} onValue={setIssuedBy} pointer="/document/issuedBy" required />
        <Field
          label="The limit in its own terms"
          lines={3}
          most={1000}
          value={limit}
          onValue={setLimit}
          pointer="/document/limit"
          required
        />
        <Field
          label="Interval"
          hint='Such as "10 calendar-days" or "50 flight-hours"'
          value={interval}
          onValue={setInterval}
          pointer="/document/interval"
          short
        />
        <WallInput
          what="it ends"
          zone={operator.base}
          value={until}
          onValue={setUntil}
          pointer="/document/until"
          required={false}
        />
      </SignForm>
      {document !== '' && (
        <ConcurrencePart
          view={view}
          basis={document}
          query={{ document }}
          body={body}
          seen={seen}
          readAgain={readAgain}
        />
      )}
    </>
  );
}
