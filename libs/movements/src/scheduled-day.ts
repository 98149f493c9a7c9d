import { dayOfMinute, dayOfMonth } from './utc-minute.js';

/** How far from its receipt a message may name the scheduled day: a 27-day window at most, or a day occurs twice. */
export interface DayWindow {
  daysBack: number;
  daysAhead: number;
}

/**
 * The day that two digits mean, seen from the receipt: `30` received on 1 March is no day from 27 February to 2 March,
 * hence none; `31` received on 1 February is 31 January.
 */
export function scheduledDayOf(
  day: number,
  receivedMinute: number,
  { daysBack, daysAhead }: DayWindow,
): number | null {
  const receivedOn = dayOfMinute(receivedMinute);
  for (let candidate = receivedOn + daysAhead; candidate >= receivedOn - daysBack; candidate -= 1) {
    if (dayOfMonth(candidate) === day) return candidate;
  }
  return null;
}

/** The day within -1 to +3 days of the flight's own that these digits mean; a leg may follow the first days later. */
export function dayNear(day: number, scheduledDay: number): number | null {
  for (const away of [0, 1, -1, 2, 3]) if (dayOfMonth(scheduledDay + away) === day) return scheduledDay + away;
  return null;
}
