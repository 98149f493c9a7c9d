/** Where instants lie on a line of time that begins now. All lines of one page share it, so that they can be compared. */
const DAY = 86_400_000;
const LONGEST_DAYS = 14;
const SHORTEST_DAYS = 3;

export interface Scale {
  /** Milliseconds. */
  now: number;
  days: number;
}

/** One mark on a line: `at` is the share of the line, from 0 to 1. */
export interface Mark {
  at: number;
  kind: 'fixed' | 'projected';
  /** It lies after the end of the line. */
  beyond: boolean;
  /** It lies before now. */
  over: boolean;
}

/** Long enough for the last of these ends, at least three days and at most fourteen. */
export function scaleFor(now: string, ends: readonly string[]): Scale {
  const from = Date.parse(now);
  const last = Math.max(0, ...ends.map((end) => (Date.parse(end) - from) / DAY));
  return { now: from, days: Math.min(LONGEST_DAYS, Math.max(SHORTEST_DAYS, Math.ceil(last))) };
}

export function markAt({ now, days }: Scale, instant: string, kind: Mark['kind']): Mark {
  const share = (Date.parse(instant) - now) / (days * DAY);
  return { at: Math.min(1, Math.max(0, share)), kind, beyond: share > 1, over: share <= 0 };
}

/** One for each day. */
export function ticksOf({ days }: Scale): number[] {
  return Array.from({ length: days + 1 }, (_, day) => day / days);
}

/** `5 h`, `2 days 4 h`; whole hours, rounded down, so that nothing is gained. */
export function fromNow({ now }: Scale, instant: string): string {
  const hours = Math.floor((Date.parse(instant) - now) / 3_600_000);
  if (hours < 0) return 'over';
  const [days, rest] = [Math.floor(hours / 24), hours % 24];
  const dayWords = days === 0 ? '' : `${days} ${days === 1 ? 'day' : 'days'}`;
  return [dayWords, rest === 0 && days > 0 ? '' : `${rest} h`].filter(Boolean).join(' ');
}
