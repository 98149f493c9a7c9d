import { useState } from 'preact/hooks';
import { Field } from '../shell/fields.js';
import type { ActFormProps } from './act-form-props.js';
import { SignedAct } from './signed-act.js';

/** Everything is back in its normal configuration. */
export function RestoreForm(props: ActFormProps) {
  const [reference, setReference] = useState('');
  return (
    <SignedAct
      {...props}
      address="restoration"
      act="restore"
      body={() => ({ reference })}
      button="Sign: restored"
      said="Signed: back in its normal configuration."
    >
      <Field
        label="Manual reference, with revision"
        value={reference}
        onValue={setReference}
        pointer="/reference"
        required
      />
    </SignedAct>
  );
}
