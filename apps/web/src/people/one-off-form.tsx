import { useState } from 'preact/hooks';
import { SignForm } from '../acts/sign-form.js';
import type { Schemas } from '../api/client.js';
import { serverNow } from '../api/server-clock.js';
import { useRead } from '../api/use-read.js';
import { announce } from '../shell/announce.js';
import { Choice, Field } from '../shell/fields.js';
import { Read } from '../shell/reading.js';
import { useSettled } from '../shell/use-settled.js';
import { itemName, privilegeWords } from '../words/words.js';

const PRIVILEGES = ['sign-procedure', 'inspect', 'release', 'defer'] as const;
const HOURS = ['4', '12', '24'] as const;

/** Authorises one person for one signature on one job, when nobody whose scope covers it is there. */
export function OneOffForm({ member, issued }: { member: Schemas['MemberView']; issued(): Promise<void> }) {
  const [open, setOpen] = useState(false);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Authorise {member.name} for one signature</summary>
      {open && <Issue member={member} issued={issued} />}
    </details>
  );
}

function Issue({ member, issued }: { member: Schemas['MemberView']; issued(): Promise<void> }) {
  const open = useRead<Schemas['DefectList']>('/defects');
  const [defect, setDefect] = useState('');
  const [privilege, setPrivilege] = useState<(typeof PRIVILEGES)[number]>('sign-procedure');
  const [hours, setHours] = useState<(typeof HOURS)[number]>('4');
  const [because, setBecause] = useState('');
  const [opened] = useState(() => Date.parse(serverNow()));
  const validUntil = new Date(opened + Number(hours) * 3_600_000).toISOString();
  const scope = { defect, privilege, validUntil, because };
  const asked = useSettled(new URLSearchParams(scope).toString());
  const known = defect !== '' && because.trim() !== '';
  async function done(): Promise<void> {
    announce(`${member.name} is authorised for one signature.`);
    await issued();
  }
  return (
    <SignForm
      statementPath={known ? `/people/${member.id}/one-off-statement?${asked}` : null}
      path={`/people/${member.id}/one-off`}
      body={() => scope}
      button={`Sign: authorise ${member.name}`}
      done={() => void done()}
    >
      <Read of={open}>
        {({ defects }) => (
          <div class="field">
            <label for={`job-${member.id}`}>For which open item</label>
            <select
              id={`job-${member.id}`}
              required
              value={defect}
              onChange={(event) => setDefect(event.currentTarget.value)}
            >
              <option value="">Choose one</option>
              {defects.map((one) => (
                <option key={one.id} value={one.id}>
                  {one.number} {itemName(one)}
                </option>
              ))}
            </select>
          </div>
        )}
      </Read>
      <Choice
        legend="To do what, once"
        options={PRIVILEGES.map((value) => ({ value, text: privilegeWords(value) }))}
        value={privilege}
        onValue={setPrivilege}
      />
      <Choice
        legend="Good for"
        options={HOURS.map((value) => ({ value, text: `${value} hours` }))}
        value={hours}
        onValue={setHours}
      />
      <Field
        label="Why nobody else can, and what makes this person fit for it"
        hint="It is kept for ever: name no other person."
        value={because}
        onValue={setBecause}
        pointer="/because"
        lines={2}
        most={400}
        required
      />
      <p class="soft">The authority may have to be told of it; the operator's procedure says when.</p>
    </SignForm>
  );
}
