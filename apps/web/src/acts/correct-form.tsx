import { useState } from 'preact/hooks';
import type { Schemas } from '../api/client.js';
import { Choice, Field } from '../shell/fields.js';
import { useSettled } from '../shell/use-settled.js';
import type { ActFormProps } from './act-form-props.js';
import { SignForm } from './sign-form.js';

const FIELDS = [
  { value: 'description', text: 'Description' },
  { value: 'sheet', text: 'Log sheet' },
  { value: 'system', text: 'System (ATA chapter)' },
  { value: 'faultMessage', text: 'Message shown' },
  { value: 'occurredAt', text: 'Time it happened' },
  { value: 'recordedAt', text: 'Time in the log' },
] as const;

type What = (typeof FIELDS)[number]['value'];

const HINTS: Partial<Record<What, string>> = {
  system: 'Two digits',
  occurredAt: 'With its offset, such as 2026-01-26T10:00:00Z',
  recordedAt:
    'With its offset, such as 2026-01-26T10:00:00Z. It can only become earlier; what that moves is said below.',
};

/** Something in the write-up was mistyped. What was written stays readable, struck, in the history. */
export function CorrectForm({ view, seen, done, readAgain }: ActFormProps) {
  const { id } = view.defect;
  const [field, setField] = useState<What>('description');
  const [now, setNow] = useState('');
  const [reason, setReason] = useState('');
  const settled = useSettled(now);
  const query = new URLSearchParams({ act: 'correct', field, now: settled });
  return (
    <SignForm<Schemas['ActDone']>
      statementPath={settled.trim() === '' ? null : `/defects/${id}/statement?${query.toString()}`}
      path={`/defects/${id}/correction`}
      seen={seen}
      readAgain={readAgain}
      body={() => ({ field, now, reason })}
      button="Sign: corrected"
      done={() => done('Corrected. What was written stays in the history.')}
    >
      <Choice legend="What was mistyped" options={FIELDS} value={field} onValue={setField} />
      <Field
        label="It should read"
        hint={HINTS[field]}
        lines={field === 'description' ? 3 : undefined}
        most={4000}
        value={now}
        onValue={setNow}
        pointer="/now"
        required
      />
      <Field
        label="Why it is corrected"
        lines={2}
        most={1000}
        value={reason}
        onValue={setReason}
        pointer="/reason"
        required
      />
    </SignForm>
  );
}
