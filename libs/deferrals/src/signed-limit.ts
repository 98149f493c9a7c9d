/**
 * Until when a deferral is good, as it was signed.
 *
 * A limit is fixed when a basis is signed for the defect, from the day it was recorded in the log, and stored with its
 * result. Each further signing adds one, so time is never gained by changing the row: all of them must hold. A limit
 * ends only by an extension granted in time, or when the cause of a stricter row is gone and control signs.
 */
import type { Limit, RectificationClock } from '#intervals';
import { before, earliest } from './instant.js';

export interface SignedLimit {
  /** The window and counted limits; null when the basis gives no interval. */
  clock: RectificationClock | null;
  /** The last instant (exclusive) that the document itself sets; null when it sets none. */
  until: string | null;
  /** True when the row's window counts from the record of another unit of the pair. */
  pair: boolean;
}

/** What is shown of all limits together: the earliest end, and everything that is counted. */
export interface Deadline {
  /** The last calendar day in `base`; null when the end is an instant of a document, or plain hours. */
  lastDay: string | null;
  /** Exclusive, UTC; null when no limit has a fixed end. */
  endsAt: string | null;
  base: string | null;
  tzdb: string | null;
  counted: Limit[];
}

/** True for what is counted from the use of the aircraft, and not read from a calendar or a clock. */
export function isCounted({ unit }: Limit): boolean {
  return unit !== 'calendar-days' && unit !== 'hours';
}

/** The earliest fixed end of all limits, or null when none has one. */
export function earliestEnd(limits: readonly SignedLimit[]): string | null {
  return earliest(limits.flatMap(({ clock, until }) => [clock?.endsAt ?? null, until]));
}

/** Every limit that is counted from the use of the aircraft. */
export function countedLimits(limits: readonly SignedLimit[]): Limit[] {
  return limits.flatMap(({ clock }) => clock?.limits ?? []).filter(isCounted);
}

export function deadlineOf(limits: readonly SignedLimit[]): Deadline {
  const endsAt = earliestEnd(limits);
  const binding = limits.map(({ clock }) => clock).find((clock) => clock !== null && clock.endsAt === endsAt) ?? null;
  return {
    lastDay: binding?.lastDay ?? null,
    endsAt,
    base: binding?.base ?? null,
    tzdb: binding?.tzdb ?? null,
    counted: countedLimits(limits),
  };
}

/** True once the earliest fixed end is reached. The end itself is outside: windows are half-open. */
export function isOver(limits: readonly SignedLimit[], at: string): boolean {
  const end = earliestEnd(limits);
  return end !== null && !before(at, end);
}
