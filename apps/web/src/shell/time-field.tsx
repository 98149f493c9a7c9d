import { Field } from './fields.js';

interface TimeFieldProps {
  label: string;
  /** `hh:mm`, or what was typed so far. */
  value: string;
  onValue(value: string): void;
  pointer: string;
  required: boolean;
}

/** A time of day on 24 hours, typed with four digits. A browser's own field might show it as a.m. and p.m. */
export function TimeField({ label, value, onValue, pointer, required }: TimeFieldProps) {
  return (
    <Field
      label={label}
      hint="Four digits, 24 hours"
      value={value}
      onValue={(typed) => onValue(withColon(typed))}
      pointer={pointer}
      inputMode="numeric"
      most={5}
      required={required}
      short
    />
  );
}

/** `0220` as `02:20`; anything else stays as typed. */
function withColon(typed: string): string {
  return typed.trim().replace(/^(\d\d)[:.]?(\d\d)$/, '$1:$2');
}
