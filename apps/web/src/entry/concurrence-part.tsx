import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { SignForm } from '../acts/sign-form.js';
import type { Schemas } from '../api/client.js';
import { useSession } from '../session/session.js';
import { announce } from '../shell/announce.js';
import { withOffset } from '../words/time.js';
import { roleWords } from '../words/words.js';

/** Who is offered to concur. Whether one may, the authorisation says, and the server sees to it. */
const MAY_CONCUR = ['maintenance-control', 'engineer', 'quality'];

interface ConcurrencePartProps {
  view: Schemas['DefectView'];
  /** As the statement names it: `MEL 33-42-11 row 1`. */
  basis: string;
  /** What the statement is asked for, beside the act; null while something of it is missing. */
  query: Record<string, string> | null;
  /** What is stated with it, to be filled in by whoever concurs too. */
  stated?: ComponentChildren;
  body: object;
  seen: string | null;
  readAgain(): void;
}

/** Where the operator asks for a second person: that somebody concurred, the signature of it, or whom to ask. */
export function ConcurrencePart(props: ConcurrencePartProps) {
  const { view, basis, readAgain } = props;
  const { operator, roles } = useSession();
  const [open, setOpen] = useState(false);
  const { needed, given } = view.concurrence;
  if (!needed) return null;
  const yes = given.find((one) => one.basis === basis);
  if (yes) {
    return (
      <p>
        <strong>{yes.by} concurs</strong>, {roleWords(yes.role)}, {withOffset(yes.signedAt, operator.base)}.
      </p>
    );
  }
  if (open) return <Concur {...props} />;
  const mine = roles.some((role) => MAY_CONCUR.includes(role));
  return (
    <>
      <p class="strong">
        {mine
          ? 'Nobody has concurred yet.'
          : 'Before it is signed, another person concurs with a signature of their own.'}
      </p>
      {!mine && (
        <p>
          Call maintenance control and name {view.defect.number} and {basis}. When they have signed, look again.
        </p>
      )}
      <div class="buttons">
        {mine ? (
          <button type="button" class="main" onClick={() => setOpen(true)}>
            Concur to {basis}
          </button>
        ) : (
          <button type="button" onClick={readAgain}>
            Look again
          </button>
        )}
      </div>
    </>
  );
}

function Concur({ view, basis, query, stated, body, seen, readAgain }: ConcurrencePartProps) {
  const at = `/defects/${view.defect.id}`;
  function done(): void {
    announce(`You concur to ${basis}.`);
    readAgain();
  }
  return (
    <SignForm
      statementPath={query && `${at}/statement?${new URLSearchParams({ act: 'concur', ...query }).toString()}`}
      path={`${at}/concurrence`}
      seen={seen}
      body={() => body}
      button="Sign: concur"
      done={done}
      readAgain={readAgain}
      takesFocus
    >
      {stated}
    </SignForm>
  );
}
