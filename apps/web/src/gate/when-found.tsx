import { Choice } from '../shell/fields.js';

export type WhenFoundOrNot = 'not-said' | 'before-moving' | 'own-power' | 'after-take-off';

export const MOMENTS = [
  { value: 'before-moving', text: 'Before the aircraft moved' },
  { value: 'own-power', text: 'Moving under its own power, before take-off power' },
  { value: 'after-take-off', text: 'After take-off' },
] as const;

interface WhenFoundProps {
  value: WhenFoundOrNot;
  onValue(value: WhenFoundOrNot): void;
}

/** Optional: it says whether the MEL decides about the flight on which it was found. */
export function WhenFound({ value, onValue }: WhenFoundProps) {
  return (
    <details>
      <summary>When it was found, if on a flight</summary>
      <Choice
        legend="Found when"
        hint="The MEL does not decide about every flight on which something fails."
        options={[{ value: 'not-said', text: 'Not said' }, ...MOMENTS]}
        value={value}
        onValue={onValue}
      />
    </details>
  );
}
