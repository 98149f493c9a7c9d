import { useState } from 'preact/hooks';
import { Field } from '../shell/fields.js';
import type { ActFormProps } from './act-form-props.js';
import { SignedAct } from './signed-act.js';

/** A second person, who did none of the work, looked at it. */
export function InspectForm(props: ActFormProps) {
  const [findings, setFindings] = useState('');
  return (
    <SignedAct
      {...props}
      address="inspection"
      act="inspect"
      body={() => ({ findings })}
      button="Sign: inspected"
      said="The independent inspection is signed."
    >
      <Field
        label="What you looked at and found"
        lines={3}
        most={1000}
        value={findings}
        onValue={setFindings}
        pointer="/findings"
        required
      />
    </SignedAct>
  );
}
