/**
 * A date and a time as somebody wrote them on a paper sheet. Where clocks go back, one hour is read twice; where they go
 * forward, one is missing. Which of the two it was only the writer knows, so the page asks.
 */
import { offsetMinutes, offsetText } from './time.js';

const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;

export interface Meaning {
  /** `2026-10-25T02:20+01:00` */
  at: string;
  /** `+01:00` */
  offset: string;
}

/**
 * What a date and a time can mean in a zone, the earlier one first: two in a repeated hour, none in a missing one.
 * @param date `2026-10-25`
 * @param time `02:20`
 */
export function meaningsOf(date: string, time: string, zone: string): Meaning[] {
  if (!/^\d{4}-\d\d-\d\d$/.test(date) || !/^\d\d:\d\d$/.test(time)) return [];
  const wall = Date.parse(`${date}T${time}:00Z`);
  const exists = !Number.isNaN(wall) && new Date(wall).toISOString().startsWith(date);
  if (!exists) return [];
  const near = [wall - DAY_MS, wall + DAY_MS].map((at) => offsetMinutes(zone, at));
  return [...new Set(near)]
    .filter((minutes) => offsetMinutes(zone, wall - minutes * MINUTE_MS) === minutes)
    .sort((one, other) => other - one)
    .map((minutes) => ({ at: `${date}T${time}${offsetText(minutes)}`, offset: offsetText(minutes) }));
}
