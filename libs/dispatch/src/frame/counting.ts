/** The interval arithmetic of #intervals, asked once for each distinct question. */
import {
  mayDepart,
  rectificationWindow,
  type CountingSettings,
  type PlannedLeg,
  type RectificationClock,
  type Used,
  type WindowInput,
} from '#intervals';
import { remember } from './remember.js';

/** A clock of a category and record, as rectificationWindow gives it. No readable value holds a bar. */
export const clockOf = remember(
  ({ category, interval = '', recordedAt, base, tzdb }: WindowInput) =>
    `${category}|${interval}|${recordedAt}|${base}|${tzdb}`,
  (input) => rectificationWindow(input),
);

/** What the limits of a clock say to a flight, as mayDepart answers it. */
export const departure = remember(
  (clock: RectificationClock, leg: PlannedLeg, used: Used, counting: Partial<CountingSettings>) =>
    `${writeOnce(clock, writeClock)}|${writeOnce(leg)}|${writeOnce(used)}|${writeOnce(counting)}`,
  (clock, leg, used, counting) => mayDepart(clock, leg, used, counting),
);

const WRITTEN = new WeakMap<object, string>();

/** Of what is made once and then asked with for many items: the same row, the same flight, the same counters. */
function writeOnce<T extends object>(parts: T, write: (parts: T) => string = writeParts): string {
  let written = WRITTEN.get(parts);
  if (written === undefined) WRITTEN.set(parts, (written = write(parts)));
  return written;
}

function writeClock({ interval, limits, recordedAt, base, endsAt }: RectificationClock): string {
  return `${interval}|${limits.map(({ amount, unit }) => `${amount} ${unit}`).join()}|${recordedAt}|${base}|${endsAt}`;
}

/** Two objects written alike hold the same, for the flat objects that are counted with. */
function writeParts(parts: object): string {
  const entries = Object.entries(parts);
  return entries.length === 0 ? '' : JSON.stringify(entries);
}
