import { useState } from 'preact/hooks';
import { Field } from '../shell/fields.js';
import { leftKind } from '../words/words.js';
import type { ActFormProps } from './act-form-props.js';
import { SignedAct } from './signed-act.js';

/** The failed part is swapped to another position: placard and everything left go with it, and each says where it is. */
export function SwapForm(props: ActFormProps) {
  const { defect, left } = props.view;
  const [toUnit, setToUnit] = useState('');
  const [reason, setReason] = useState('');
  const [places, setPlaces] = useState<Record<string, string>>({});
  const [fromUnit = ''] = defect.units;
  const moved = left.map(({ id, where }) => ({ item: id, where: places[id] ?? where }));
  return (
    <SignedAct
      {...props}
      address="swap"
      act="swap-unit"
      body={() => ({ fromUnit, toUnit, reason, moved })}
      button="Sign: swapped"
      said="The defect, its placard and what is left for it moved with the part. The clock runs on."
    >
      <p>Failed now: unit {fromUnit}</p>
      <Field
        label="Unit it is at after the swap"
        most={40}
        value={toUnit}
        onValue={setToUnit}
        pointer="/toUnit"
        required
        short
      />
      <Field
        label="Why it was swapped"
        lines={2}
        most={1000}
        value={reason}
        onValue={setReason}
        pointer="/reason"
        required
      />
      {left.map(({ id, kind, tag, where }) => (
        <Field
          key={id}
          label={`Where it is now: ${leftKind(kind)}, ${tag}`}
          value={places[id] ?? where}
          onValue={(place) => setPlaces({ ...places, [id]: place })}
          required
        />
      ))}
    </SignedAct>
  );
}
