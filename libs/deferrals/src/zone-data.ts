/**
 * Deadlines under newer time-zone data. A deadline is stored with the version it was computed with; when newer data puts
 * the end of its last day at another instant, both ends are kept and the stricter counts until a person confirms the new
 * one. The days themselves are the legal truth and never move.
 */
import { readInstant, recountEnds, type RectificationClock, type StartOfDayIn, writeInstant } from '#intervals';
import type { DeferralSettings } from './context.js';
import type { DefectLife } from './defect-life.js';
import { before, millisecondsOf } from './instant.js';
import { Refusal } from './refusal.js';
import type { SignedLimit } from './signed-limit.js';

/** One deadline that newer data reads otherwise. Instants are ISO 8601, ends are exclusive. */
export interface ZoneDifference {
  zone: string;
  tzdbBefore: string;
  tzdbAfter: string;
  endsBefore: string;
  endsAfter: string;
  confirmed: boolean;
}

/** What newer data says otherwise of the open limits of a defect. */
export function zoneDifferences(life: DefectLife, tzdb: string, startOfDayIn?: StartOfDayIn): ZoneDifference[] {
  if (life.closed !== null) return [];
  return life.limits.flatMap(({ clock }) => {
    if (clock === null || clock.endsAt === null || clock.tzdb >= tzdb) return [];
    const { endsAt } = recountEnds(clock, tzdb, startOfDayIn);
    if (endsAt === null || isSame(endsAt, clock.endsAt)) return [];
    const { base: zone, tzdb: tzdbBefore, endsAt: endsBefore } = clock;
    return [{ zone, tzdbBefore, tzdbAfter: tzdb, endsBefore, endsAfter: endsAt, confirmed: false }];
  });
}

/** The life with the ends that count: the earlier of two until somebody confirmed, then the newer one. */
export function underZoneData(life: DefectLife, differences: readonly ZoneDifference[]): DefectLife {
  if (differences.length === 0) return life;
  return { ...life, limits: life.limits.map((limit) => inForce(limit, differences)) };
}

/** One version after the other, the newest first where several were held against the same end. */
function inForce(limit: SignedLimit, differences: readonly ZoneDifference[]): SignedLimit {
  const { clock } = limit;
  if (clock === null) return limit;
  const [newest] = differences
    .filter((one) => isOf(one, clock) && (one.confirmed || before(one.endsAfter, one.endsBefore)))
    .sort((one, other) => (one.tzdbAfter < other.tzdbAfter ? 1 : -1));
  if (newest === undefined) return limit;
  const { tzdbAfter: tzdb } = newest;
  const endsAt = writeInstant(readInstant('endsAfter', newest.endsAfter));
  const explanation = `${clock.explanation} With time-zone data ${tzdb} it ends before ${endsAt}.`;
  return inForce({ ...limit, clock: { ...clock, endsAt, tzdb, explanation } }, differences);
}

function isOf({ zone, tzdbBefore, endsBefore }: ZoneDifference, { base, tzdb, endsAt }: RectificationClock): boolean {
  return zone === base && tzdbBefore === tzdb && endsAt !== null && isSame(endsBefore, endsAt);
}

function isSame(one: string, other: string): boolean {
  return millisecondsOf(one, 'end') === millisecondsOf(other, 'end');
}

/** Throws Refusal `zone-data-older`: deadlines are never computed with older data than some are stored with. */
export function needZoneData({ tzdb, newestTzdb = null }: Pick<DeferralSettings, 'tzdb' | 'newestTzdb'>): void {
  if (newestTzdb !== null && newestTzdb > tzdb) throw new Refusal('zone-data-older', { tzdb, newest: newestTzdb });
}
