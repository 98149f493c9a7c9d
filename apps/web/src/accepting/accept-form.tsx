import { useState } from 'preact/hooks';
import { SignForm } from '../acts/sign-form.js';
import type { Schemas } from '../api/client.js';
import { announce } from '../shell/announce.js';
import { Choice, Field } from '../shell/fields.js';

export type AcceptingRole = 'commander' | 'dispatcher';

const ANSWERS: Record<AcceptingRole, readonly { value: 'yes' | 'no'; text: string }[]> = {
  commander: [
    { value: 'yes', text: 'I accept the aircraft for this flight' },
    { value: 'no', text: 'I decline it' },
  ],
  dispatcher: [
    { value: 'yes', text: 'I acknowledge the limits for this flight' },
    { value: 'no', text: 'I decline it' },
  ],
};

interface AcceptFormProps {
  view: Schemas['AcceptanceView'];
  role: AcceptingRole;
  readAgain(): void;
}

/** Accepted, or declined with a reason. It is good for this flight only, and for what is shown above. */
export function AcceptForm({ view, role, readAgain }: AcceptFormProps) {
  const [answer, setAnswer] = useState<'yes' | 'no' | null>(null);
  const [reason, setReason] = useState('');
  const at = `/aircraft/${view.aircraft}/flights/${view.flight.id}/acceptance`;
  const declined = answer === 'no';

  function done({ accepted }: Schemas['AcceptanceGiven']): void {
    announce(accepted ? 'Signed for this flight.' : 'Declined. Maintenance control sees it with your reason.');
    setAnswer(null);
    setReason('');
    readAgain();
  }

  return (
    <SignForm<Schemas['AcceptanceGiven']>
      statementPath={answer === null ? null : `${at}/statement?role=${role}&answer=${answer}`}
      path={at}
      readAgain={readAgain}
      body={() => ({ role, accepted: !declined, ...(declined ? { reason } : {}) })}
      button={declined ? 'Sign: declined' : 'Sign for this flight'}
      done={done}
    >
      <Choice legend="Your answer" options={ANSWERS[role]} value={answer} onValue={setAnswer} />
      {declined && (
        <Field
          label="Why you decline it"
          lines={3}
          most={1000}
          value={reason}
          onValue={setReason}
          pointer="/reason"
          required
        />
      )}
    </SignForm>
  );
}
