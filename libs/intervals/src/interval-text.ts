import { IntervalInputError } from './interval-input-error.js';

/** What an interval is counted in. `hours` run on the clock; `flight-hours` only when the aircraft is used. */
export type IntervalUnit = 'calendar-days' | 'flight-days' | 'flights' | 'cycles' | 'flight-hours' | 'hours';

/** One limit of an interval: at most `amount` of `unit`. */
export interface Limit {
  amount: number;
  unit: IntervalUnit;
}

export const INTERVAL_UNITS: readonly IntervalUnit[] = [
  'calendar-days',
  'flight-days',
  'flights',
  'cycles',
  'flight-hours',
  'hours',
];

const ONE_LIMIT = /^([1-9]\d{0,3}) ([a-z-]+)$/;
const LONGEST_TEXT = 200;

/**
 * Reads the interval of a row: `2 flight-days`, `3 flights or 6 flight-hours` (the first of them to be reached ends it).
 *
 * One may be written in the singular: `1 flight`. Everything else is refused with IntervalInputError: fractions, zero,
 * other units, other joints (`and`), one unit twice.
 */
export function parseInterval(text: string): Limit[] {
  if (typeof text !== 'string' || text.length > LONGEST_TEXT) {
    throw new IntervalInputError('interval', text, `is not a text of at most ${LONGEST_TEXT} characters.`);
  }
  const limits = text.split(' or ').map((part) => parseLimit(part, text));
  const units = limits.map((limit) => limit.unit);
  const twice = units.find((unit, index) => units.indexOf(unit) !== index);
  if (twice)
    throw new IntervalInputError('interval', text, `names ${twice} twice, so it is not clear which one counts.`);
  return limits;
}

/** Writes limits as parseInterval reads them. */
export function writeInterval(limits: readonly Limit[]): string {
  return limits.map(({ amount, unit }) => `${amount} ${amount === 1 ? unit.slice(0, -1) : unit}`).join(' or ');
}

function parseLimit(part: string, whole: string): Limit {
  const match = ONE_LIMIT.exec(part);
  const amount = Number(match?.[1]);
  const unit = INTERVAL_UNITS.find((known) => known === match?.[2] || (amount === 1 && known === `${match?.[2]}s`));
  if (!match || !unit) {
    throw new IntervalInputError(
      'interval',
      whole,
      `cannot be read: each part is a whole number from 1 to 9999, a space, and one of ${INTERVAL_UNITS.join(', ')}; parts are joined by " or ".`,
    );
  }
  return { amount, unit };
}
