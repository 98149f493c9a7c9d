import type { TimeGroup, TimePair } from './element.js';

/** Matches HHMM or DDHHMM in the patterns of the elements. */
export const timePattern = String.raw`\d{6}|\d{4}`;

/** `1115` or `211115`. 2400 is accepted, as in practice, for the end of that day. Throws a reason in words. */
export function readTimeGroup(text: string): TimeGroup {
  const day = text.length === 6 ? Number(text.slice(0, 2)) : null;
  const [hours, minutes] = [Number(text.slice(-4, -2)), Number(text.slice(-2))];
  if (day !== null && (day < 1 || day > 31)) throw new Unreadable(`has the day ${text.slice(0, 2)}`);
  if (minutes > 59) throw new Unreadable(`has ${minutes} minutes`);
  if (hours > 24 || (hours === 24 && minutes > 0)) throw new Unreadable(`has the hour ${text.slice(-4)}`);
  return { day, minutes: hours * 60 + minutes };
}

export function readTimePair(first: string | undefined, second: string | undefined): TimePair {
  return {
    first: first === undefined ? null : readTimeGroup(first),
    second: second === undefined ? null : readTimeGroup(second),
  };
}

/** `0015` as a duration. */
export function readDuration(text: string): number {
  const minutes = Number(text.slice(2));
  if (minutes > 59) throw new Unreadable(`has ${minutes} minutes`);
  return Number(text.slice(0, 2)) * 60 + minutes;
}

/** Why an element does not read; caught where the place is known, and put into the tray. */
export class Unreadable extends Error {}
