import { useState } from 'preact/hooks';
import { Choice, Field } from '../shell/fields.js';
import type { ActFormProps } from './act-form-props.js';
import { SignedAct } from './signed-act.js';

const RESULTS = [
  { value: 'good', text: 'good' },
  { value: 'not-good', text: 'not good' },
] as const;

/** A test after the work. One that was not good is kept, and leaves the work open. */
export function TestForm(props: ActFormProps) {
  const [test, setTest] = useState('');
  const [result, setResult] = useState<'good' | 'not-good' | null>(null);
  return (
    <SignedAct
      {...props}
      address="test"
      body={() => ({ test, result })}
      button="Sign: tested"
      said={result === 'good' ? 'The test is signed: good.' : 'The test is signed: not good. The work stays open.'}
    >
      <Field
        label="Which test, and what it read"
        lines={2}
        most={1000}
        value={test}
        onValue={setTest}
        pointer="/test"
        required
      />
      <Choice legend="Its result" options={RESULTS} value={result} onValue={setResult} />
    </SignedAct>
  );
}
