import { useState } from 'preact/hooks';
import { Field } from '../shell/fields.js';
import type { ActFormProps } from './act-form-props.js';
import { GoneOverTicks, NOT_GONE_OVER } from './gone-over.js';
import { SignedAct } from './signed-act.js';

/** Somebody went over the aircraft after the work: tools, panels, register. It counts until anything is touched again. */
export function VerifyForm(props: ActFormProps) {
  const [seen, setSeen] = useState(NOT_GONE_OVER);
  const [remarks, setRemarks] = useState('');
  return (
    <SignedAct
      {...props}
      address="verification"
      act="verify"
      body={() => ({ ...seen, ...(remarks.trim() === '' ? {} : { remarks }) })}
      button="Sign: gone over"
      said="The general verification is signed."
    >
      <GoneOverTicks seen={seen} onSeen={setSeen} />
      <Field label="Remarks" lines={2} most={1000} value={remarks} onValue={setRemarks} pointer="/remarks" />
    </SignedAct>
  );
}
