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
    `${clock.interval}|${clock.limits.map(({ amount, unit }) => `${amount} ${unit}`).join()}|${clock.recordedAt}|${clock.base}|${clock.endsAt}|${writeOnce(leg)}|${writeParts(used)}|${writeOnce(counting)}`,
  (clock, leg, used, counting) => mayDepart(clock, leg, used, counting),
);

const WRITTEN = new WeakMap<object, string>();

/** Of a leg and of settings, which a frame makes once, and asks with for each of its items. */
function writeOnce(parts: object): string {
  let written = WRITTEN.get(parts);
  if (written === undefined) WRITTEN.set(parts, (written = writeParts(parts)));
  return written;
}

/** Two objects written alike hold the same, for the flat objects that are counted with. */
function writeParts(parts: object): string {
  const entries = Object.entries(parts);
  return entries.length === 0 ? '' : JSON.stringify(entries);
}
