import { Temporal } from 'temporal-polyfill';
import { minutesBetween, startOfDay } from './calendar-day.js';
import { sayEnd, sayRecorded } from './calendar-window.js';
import type { CountedClock, CountsFrom, RectificationClock } from './clock.js';
import { readInstant, writeInstant } from './instant.js';
import type { IntervalUnit, Limit } from './interval-text.js';
import type { Recorded } from './recorded.js';

type CountedPart = Pick<
  CountedClock,
  | 'kind'
  | 'days'
  | 'firstDay'
  | 'lastDay'
  | 'startsAt'
  | 'endsAt'
  | 'lengthMinutes'
  | 'lengthHours'
  | 'countsFrom'
  | 'explanation'
>;

/** A fixed end of a counted clock: that of its calendar days, or of its hours. */
export interface FixedEnd {
  limit: Limit;
  ends: Temporal.Instant;
  lastDay: Temporal.PlainDate | null;
}

const HOW_COUNTED: Record<IntervalUnit, (base: string) => string> = {
  'calendar-days': () => 'midnight to midnight, the day of discovery excluded',
  'flight-days': (base) => `a day in ${base} on which a flight is initiated, the day of discovery excluded`,
  flights: () => 'every flight after the record counts, no day is excluded',
  cycles: () => 'every cycle after the record counts',
  'flight-hours': () => 'every flight minute after the record counts, and the planned flight with them',
  hours: () => 'hours on the clock from the record, in use or not',
};

/** The parts of a clock whose limits are not calendar days alone. */
export function countedClock(limits: Limit[], recorded: Recorded, base: string, countsFrom: CountsFrom): CountedPart {
  const fixed = limits.map((limit) => fixedEnd(limit, recorded, base)).filter((end) => end !== null);
  const earliest = fixed.reduce<FixedEnd | null>(
    (first, end) => (first && !isBefore(end, first) ? first : end),
    null,
  );
  const lengthMinutes = earliest ? minutesBetween(recorded.instant, earliest.ends) : null;
  return {
    kind: 'counted',
    days: null,
    firstDay: earliest?.lastDay ? recorded.day.add({ days: 1 }).toString() : null,
    lastDay: earliest?.lastDay?.toString() ?? null,
    startsAt: writeInstant(recorded.instant),
    countsFrom,
    endsAt: earliest ? writeInstant(earliest.ends) : null,
    lengthMinutes,
    lengthHours: lengthMinutes === null ? null : lengthMinutes / 60,
    explanation: explain(limits, fixed, recorded, base, countsFrom),
  };
}

/** The end of a limit that runs by itself; null for one that is counted from use. */
export function fixedEnd(limit: Limit, recorded: Pick<Recorded, 'instant' | 'day'>, base: string): FixedEnd | null {
  if (limit.unit === 'hours') return { limit, ends: recorded.instant.add({ hours: limit.amount }), lastDay: null };
  if (limit.unit !== 'calendar-days') return null;
  const lastDay = recorded.day.add({ days: limit.amount });
  return { limit, ends: startOfDay(lastDay.add({ days: 1 }), base), lastDay };
}

/** The end of a limit of this clock. A calendar clock keeps its own, which an extension may have moved. */
export function endOf(limit: Limit, clock: RectificationClock): Temporal.Instant {
  if (clock.kind === 'calendar') return readInstant('endsAt', clock.endsAt);
  const recorded = {
    instant: readInstant('recordedAt', clock.recordedAt),
    day: Temporal.PlainDate.from(clock.dayOfDiscovery),
  };
  const end = fixedEnd(limit, recorded, clock.base);
  if (!end) throw new Error(`${limit.unit} have no fixed end`);
  return end.ends;
}

function isBefore(one: FixedEnd, other: FixedEnd): boolean {
  return Temporal.Instant.compare(one.ends, other.ends) < 0;
}

function explain(
  limits: Limit[],
  fixed: FixedEnd[],
  recorded: Recorded,
  base: string,
  countsFrom: CountsFrom,
): string {
  const parts = limits.map(({ amount, unit }) => {
    const end = fixed.find((candidate) => candidate.limit.unit === unit);
    return `${amount} ${unit} (${HOW_COUNTED[unit](base)}${end ? `, ${sayEnd(end.ends, base)}` : ''})`;
  });
  const start = countsFrom === 'next-flight' ? '; use counts from the next flight' : '';
  const joined = parts.length > 1 ? `${parts.join(' or ')}, whichever is reached first` : parts.join('');
  return `${sayRecorded(recorded, base)}; ${joined}${start}.`;
}
