import { Choice, Field } from '../shell/fields.js';
import { instantOf, type WallValue, WallInput } from '../shell/wall-input.js';

/** From when use counts, where a document states it. */
export interface StatedStartValue {
  how: 'row' | 'instant' | 'counter';
  at: WallValue;
  counter: string;
  reading: string;
  document: string;
}

const HOW = [
  { value: 'row', text: 'As the row and the settings say' },
  { value: 'instant', text: 'A document states an earlier instant' },
  { value: 'counter', text: 'A document states a counter' },
] as const;

interface StatedStartProps {
  value: StatedStartValue;
  onValue(value: StatedStartValue): void;
}

/** Asked where use is counted. A stated start may end the interval sooner, never later; the server holds to that. */
export function StatedStart({ value, onValue }: StatedStartProps) {
  const set = (key: 'counter' | 'reading' | 'document') => (text: string) => onValue({ ...value, [key]: text });
  const { how } = value;
  return (
    <details>
      <summary>A document states from when use counts</summary>
      <Choice legend="From when" options={HOW} value={how} onValue={(one) => onValue({ ...value, how: one })} />
      {how === 'counter' && (
        <div class="pair">
          <Field
            label="Counter at the start"
            hint="Whole number, or hours and minutes such as 410:30"
            value={value.counter}
            onValue={set('counter')}
            pointer="/start/counter"
            required
            short
          />
          <Field
            label="What it read later"
            hint="The same way"
            value={value.reading}
            onValue={set('reading')}
            pointer="/start/reading"
            required
            short
          />
        </div>
      )}
      {how !== 'row' && (
        <>
          <WallInput
            what={how === 'instant' ? 'of the start, UTC' : 'when it read that, UTC'}
            zone="UTC"
            value={value.at}
            onValue={(at) => onValue({ ...value, at })}
            pointer={how === 'instant' ? '/start/at' : '/start/readAt'}
          />
          <Field
            label="The document that states it"
            value={value.document}
            onValue={set('document')}
            pointer="/start/document"
            required
          />
        </>
      )}
    </details>
  );
}

/** What is sent beside the row; nothing where row and settings say it. */
export function startSent({ how, at, counter, reading, document }: StatedStartValue): object {
  if (how === 'row') return {};
  const instant = instantOf(at, 'UTC');
  if (how === 'instant') return { start: { at: instant, document } };
  return { start: { counter: numberIn(counter), reading: numberIn(reading), readAt: instant, document } };
}

interface Started {
  at?: string | null;
  counter?: number | string;
  reading?: number | string;
  readAt?: string | null;
  document: string;
}

/** The same for the statement, as text that does not change while nothing does; null while something is missing. */
export function startQuery(value: StatedStartValue): Record<string, string> | null {
  if (value.how === 'row') return {};
  const { start } = startSent(value) as { start: Started };
  const said = Object.entries(start).map(([key, one]) => [key, one === null ? '' : String(one)] as const);
  if (said.some(([key, one]) => one.trim() === '' || (NUMBERS.includes(key) && !/^\d+$/.test(one)))) return null;
  return Object.fromEntries(said.map(([key, one]) => [`start${key[0]?.toUpperCase() ?? ''}${key.slice(1)}`, one]));
}

const NUMBERS = ['counter', 'reading'];

/** Hours and minutes give whole minutes; what reads as neither is sent as it is, and the server says so. */
function numberIn(text: string): number | string {
  const [, whole, minutes] = /^(\d{1,7})(?::([0-5]\d))?$/.exec(text.trim()) ?? [];
  if (whole === undefined) return text;
  return minutes === undefined ? Number(whole) : Number(whole) * 60 + Number(minutes);
}
