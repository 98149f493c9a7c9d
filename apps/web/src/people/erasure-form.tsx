import { useState } from 'preact/hooks';
import { SignForm } from '../acts/sign-form.js';
import type { Schemas } from '../api/client.js';
import { useRead } from '../api/use-read.js';
import { announce } from '../shell/announce.js';
import { Field } from '../shell/fields.js';
import { Read } from '../shell/reading.js';
import { WrittenNames } from './written-names.js';

interface ErasureFormProps {
  member: Schemas['MemberView'];
  erased(answer: Schemas['PersonErased']): Promise<void>;
}

/** The personal data of somebody who left are erased for good, signed. */
export function ErasureForm({ member, erased }: ErasureFormProps) {
  const [open, setOpen] = useState(false);
  const [reason, setReason] = useState('');
  const written = useRead<Schemas['WrittenNames']>(open ? `/people/${member.id}/written-names` : null);
  async function done(answer: Schemas['PersonErased']): Promise<void> {
    announce('The personal data are erased.');
    await erased(answer);
  }
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Erase the personal data of {member.name}</summary>
      {open && (
        <>
          <div class="caution">
            <p class="strong">It cannot be undone.</p>
            <p>Erased: name, licence number, sign-in, passkeys, addresses, and what ties the person to the record.</p>
            <p>
              Stays: every entry and signature, what was certified, under which authorisation, and every proof over
              the record. They name nobody then.
            </p>
          </div>
          <Read of={written}>{(found) => <WrittenNames found={found} />}</Read>
          <SignForm<Schemas['PersonErased']>
            statementPath={`/people/${member.id}/erasure-statement`}
            path={`/people/${member.id}/erasure`}
            body={() => ({ reason })}
            button="Sign: erase the personal data"
            done={(answer) => void done(answer)}
          >
            <Field
              label="Why, for the record"
              hint="It is kept for ever: leave the name out."
              value={reason}
              onValue={setReason}
              pointer="/reason"
              most={300}
              required
            />
          </SignForm>
        </>
      )}
    </details>
  );
}
