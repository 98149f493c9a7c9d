import { useEffect, useRef } from 'preact/hooks';
import { type Meaning, meaningsOf } from '../words/wall-time.js';
import { withOffset } from '../words/time.js';
import { Choice, Field } from './fields.js';
import { TimeField } from './time-field.js';

/** A date and a time as written somewhere; `which` tells the first from the second where clocks showed it twice. */
export interface WallValue {
  date: string;
  time: string;
  which: string | null;
}

export const NO_WALL: WallValue = { date: '', time: '', which: null };

/** The instant meant, with its offset; null while it is not told or not settled which. */
export function instantOf({ date, time, which }: WallValue, zone: string): string | null {
  const meanings = meaningsOf(date, time, zone);
  return (meanings.length > 1 ? meanings.find(({ offset }) => offset === which) : meanings[0])?.at ?? null;
}

interface WallInputProps {
  /** Said in each label: "Date in the log". */
  what: string;
  zone: string;
  value: WallValue;
  onValue(value: WallValue): void;
  pointer: string;
  required?: boolean;
}

/** Local date and time in a zone. In the hour that clocks show twice it asks which of the two it was. */
export function WallInput({ what, zone, value, onValue, pointer, required = true }: WallInputProps) {
  const meanings = meaningsOf(value.date, value.time, zone);
  const group = useRef<HTMLDivElement>(null);
  const told = value.date !== '' && value.time !== '';
  const fault = told && meanings.length === 0 ? faultOf(value) : '';
  useEffect(() => {
    group.current?.querySelector<HTMLInputElement>('[inputmode=numeric]')?.setCustomValidity(fault);
  }, [fault]);
  const meant = instantOf(value, zone);
  return (
    <div ref={group}>
      <div class="pair">
        <Field
          label={`Date ${what}`}
          type="date"
          value={value.date}
          onValue={(date) => onValue({ ...value, date, which: null })}
          required={required}
          short
        />
        <TimeField
          label={`Time ${what}`}
          value={value.time}
          onValue={(time) => onValue({ ...value, time, which: null })}
          pointer={pointer}
          required={required}
        />
      </div>
      {fault !== '' && <p class="field-error">{fault}</p>}
      {meanings.length > 1 && (
        <Choice
          legend={`Clocks showed ${value.time} twice that day. Which one was it?`}
          options={meanings.map(optionOf)}
          value={value.which}
          onValue={(which) => onValue({ ...value, which })}
        />
      )}
      {meant && (
        <p>
          {withOffset(meant, zone)}, {zone}
        </p>
      )}
    </div>
  );
}

function optionOf({ offset }: Meaning, index: number): { value: string; text: string } {
  return { value: offset, text: `${index === 0 ? 'the first' : 'the second'} (UTC${offset})` };
}

function faultOf({ time }: WallValue): string {
  return /^([01]\d|2[0-3]):[0-5]\d$/.test(time)
    ? 'Clocks skip this time on that day. Look at the sheet again.'
    : 'The time needs four digits on 24 hours, such as 0220.';
}
