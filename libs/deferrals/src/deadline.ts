/**
 * Until when a deferral is good, as it was signed.
 *
 * A deadline is fixed when the deferral is signed, from the day the defect was recorded in the log. It is stored, not
 * computed anew: `lastDay` is the legal truth, `endsAt` is derived from it with the named time-zone data. Later signings
 * may bring it nearer; only an extension, granted in time, or the end of the cause of a stricter row moves it back.
 */
import { atOrAfter } from './instant.js';

/** A half-open window. `endsAt` is exclusive, UTC; `lastDay` is null for a limit in plain hours. */
export interface CalendarWindow {
  firstDay: string | null;
  lastDay: string | null;
  startsAt: string;
  endsAt: string;
  base: string;
  tzdb: string;
}

/** Units that are counted from the use of the aircraft rather than read from a calendar. */
export type CountedUnit = 'flights' | 'flight-days' | 'flight-hours' | 'cycles';

export interface CountedLimit {
  unit: CountedUnit;
  amount: number;
}

/** Whichever comes first. No calendar window and no counted limit: the basis sets no time. */
export interface Deadline {
  calendar: CalendarWindow | null;
  counted: CountedLimit[];
}

/** The stricter of two: the earlier window, and every counted limit of both. */
export function stricter(one: Deadline, other: Deadline): Deadline {
  return {
    calendar: earlierWindow(one.calendar, other.calendar),
    counted: mergeCounted([...one.counted, ...other.counted]),
  };
}

/** True when nothing in `next` allows more than `before` did. */
export function allowsNoMore(next: Deadline, before: Deadline): boolean {
  const calendarKept =
    before.calendar === null || (next.calendar !== null && atOrAfter(before.calendar.endsAt, next.calendar.endsAt));
  return calendarKept && before.counted.every((limit) => next.counted.some((kept) => isAtMost(kept, limit)));
}

function isAtMost(kept: CountedLimit, limit: CountedLimit): boolean {
  return kept.unit === limit.unit && kept.amount <= limit.amount;
}

function earlierWindow(one: CalendarWindow | null, other: CalendarWindow | null): CalendarWindow | null {
  if (one === null || other === null) return one ?? other;
  return atOrAfter(other.endsAt, one.endsAt) ? one : other;
}

function mergeCounted(limits: CountedLimit[]): CountedLimit[] {
  const least = new Map<CountedUnit, number>();
  for (const { unit, amount } of limits) least.set(unit, Math.min(amount, least.get(unit) ?? amount));
  return [...least].map(([unit, amount]) => ({ unit, amount }));
}
