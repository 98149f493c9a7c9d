import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { SignForm } from '../acts/sign-form.js';
import { useSession } from '../session/session.js';
import { Choice, Field } from '../shell/fields.js';

interface ChangeRowFormProps {
  view: Schemas['DefectView'];
  row: string;
  seen: string | null;
  done(answer: Schemas['ActDone']): void;
  readAgain(): void;
}

const KEEP = 'keep';

/** Another row takes the place of the one in force: work to be signed, and the clock is kept. */
export function ChangeRowForm({ view, row, seen, done, readAgain }: ChangeRowFormProps) {
  const { roles } = useSession();
  const [reason, setReason] = useState('');
  const [cause, setCause] = useState(KEEP);
  const { defect, causesGone } = view;
  const asked = new URLSearchParams({ act: 'change-row', row }).toString();
  const mayLetGo = causesGone.length > 0 && roles.includes('maintenance-control');
  return (
    <SignForm<Schemas['ActDone']>
      statementPath={`/defects/${defect.id}/statement?${asked}`}
      path={`/defects/${defect.id}/row`}
      seen={seen}
      body={() => ({ row, reason, ...(cause === KEEP ? {} : { causeClosed: cause }) })}
      button={`Sign: change to row ${row}`}
      done={done}
      readAgain={readAgain}
      takesFocus
    >
      <Field label="Why the row is changed" lines={2} value={reason} onValue={setReason} pointer="/reason" required />
      {causesGone.length > 0 && !mayLetGo && (
        <p>The earlier limit stays. Maintenance control may let it go, since the other unit is fixed.</p>
      )}
      {mayLetGo && (
        <Choice
          legend="The limit of the row for several units"
          options={[
            { value: KEEP, text: 'stays in force' },
            ...causesGone.map(({ id, number, units }) => ({
              value: id,
              text: `ends, since unit ${units.join(', ')} is fixed (${number})`,
            })),
          ]}
          value={cause}
          onValue={setCause}
        />
      )}
    </SignForm>
  );
}
