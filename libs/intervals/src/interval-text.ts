import { IntervalInputError } from './interval-input-error.js';

/** What an interval is counted in by a number. `hours` run on the clock; `flight-hours` only when the aircraft is used. */
export type NumberUnit =
  | 'calendar-days'
  | 'flight-days'
  | 'flights'
  | 'cycles'
  | 'flight-hours'
  | 'engine-hours'
  | 'engine-cycles'
  | 'hours';

/** What ends an interval by where the aircraft is; its amount is always 1, the first such departure. */
export type StationUnit = 'designated-departures' | 'base-opportunities';

export type IntervalUnit = NumberUnit | StationUnit;

/** One limit of an interval: at most `amount` of `unit`. */
export interface Limit {
  amount: number;
  unit: IntervalUnit;
}

export const INTERVAL_UNITS: readonly NumberUnit[] = [
  'calendar-days',
  'flight-days',
  'flights',
  'cycles',
  'flight-hours',
  'engine-hours',
  'engine-cycles',
  'hours',
];

/** Limits by station, as a row words them. */
export const STATION_LIMITS: Readonly<Record<StationUnit, string>> = {
  'designated-departures': 'next departure from a designated station',
  'base-opportunities': 'first opportunity at a base',
};

const ONE_LIMIT = /^([1-9]\d{0,3}) ([a-z-]+)$/;
export const LONGEST_TEXT = 200;

/**
 * Reads limits of which the first to be reached counts: `2 flight-days`, `3 flights or 6 flight-hours`.
 *
 * One may be written in the singular: `1 flight`. Everything else is refused with IntervalInputError: fractions, zero,
 * other units, other joints (`and`), one unit twice. `whole` is the text that an error quotes.
 */
export function parseInterval(text: string, whole: string = text): Limit[] {
  if (typeof text !== 'string' || text.length > LONGEST_TEXT) {
    throw new IntervalInputError('interval', text, `is not a text of at most ${LONGEST_TEXT} characters.`);
  }
  const limits = text.split(' or ').map((part) => parseLimit(part, whole));
  const units = limits.map((limit) => limit.unit);
  const twice = units.find((unit, index) => units.indexOf(unit) !== index);
  if (twice)
    throw new IntervalInputError('interval', whole, `names ${twice} twice, so it is not clear which one counts.`);
  return limits;
}

/** Writes limits as parseInterval reads them. */
export function writeInterval(limits: readonly Limit[]): string {
  return limits.map(writeLimit).join(' or ');
}

/** `3 flight-days`, `1 flight`, `first opportunity at a base`. */
export function writeLimit({ amount, unit }: Limit): string {
  if (isStationUnit(unit)) return STATION_LIMITS[unit];
  return `${amount} ${amount === 1 ? unit.slice(0, -1) : unit}`;
}

export function isStationUnit(unit: IntervalUnit): unit is StationUnit {
  return Object.hasOwn(STATION_LIMITS, unit);
}

function parseLimit(part: string, whole: string): Limit {
  const station = Object.entries(STATION_LIMITS).find(([, words]) => words === part);
  if (station) return { amount: 1, unit: station[0] as StationUnit };
  const match = ONE_LIMIT.exec(part);
  const amount = Number(match?.[1]);
  const unit = INTERVAL_UNITS.find((known) => known === match?.[2] || (amount === 1 && known === `${match?.[2]}s`));
  if (!match || !unit) {
    const texts = Object.values(STATION_LIMITS).map((words) => `"${words}"`);
    throw new IntervalInputError(
      'interval',
      whole,
      `cannot be read: each part is a whole number from 1 to 9999, a space, and one of ${INTERVAL_UNITS.join(', ')}, or it is ${texts.join(' or ')}; parts are joined by " or ".`,
    );
  }
  return { amount, unit };
}
