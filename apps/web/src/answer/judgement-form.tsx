import { useState } from 'preact/hooks';
import { SignForm } from '../acts/sign-form.js';
import { Choice, Field } from '../shell/fields.js';

interface JudgementFormProps {
  aircraft: string;
  flight: string | null;
  /** `combination`, or `<entry>/<row>/<judgement>`. */
  judgement: string;
  question: string;
  given(): void;
}

/** A question that only a named person can settle: answered, with a reason, and signed. */
export function JudgementForm({ aircraft, flight, judgement, question, given }: JudgementFormProps) {
  const [answer, setAnswer] = useState<'yes' | 'no' | null>(null);
  const [reach, setReach] = useState<'flight' | 'all'>(flight === null ? 'all' : 'flight');
  const [reason, setReason] = useState('');
  const asked = new URLSearchParams({ judgement, answer: answer ?? '' }).toString();

  return (
    <div class="card">
      <SignForm
        statementPath={answer === null ? null : `/aircraft/${aircraft}/judgement-statement?${asked}`}
        path={`/aircraft/${aircraft}/judgements`}
        button="Sign the judgement"
        body={() => ({
          judgement,
          accepted: answer === 'yes',
          ...(reach === 'flight' && flight !== null ? { flight } : {}),
          ...(reason.trim() === '' ? {} : { reason }),
        })}
        done={given}
      >
        <Choice legend={question} options={YES_NO} value={answer} onValue={setAnswer} />
        {flight !== null && <Choice legend="This answer is for" options={REACHES} value={reach} onValue={setReach} />}
        <Field label="Why" lines={2} most={1000} value={reason} onValue={setReason} pointer="/reason" />
      </SignForm>
    </div>
  );
}

const YES_NO = [
  { value: 'yes', text: 'yes, accepted' },
  { value: 'no', text: 'no, not accepted' },
] as const;

const REACHES = [
  { value: 'flight', text: 'this flight' },
  { value: 'all', text: 'every flight planned, until an item, row, route, ETOPS time, crew or fact changes' },
] as const;
