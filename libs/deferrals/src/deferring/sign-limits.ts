/**
 * The limits that a basis brings, counted from the day the defect was recorded in the log and from nothing else.
 *
 * A row that relieves several units at once counts from the record of the last one down (or the first, by setting);
 * every other row from its own unit's record. ORO.MLR.105; 14 CFR 121.628; FAA MMEL Policy Letter 25.
 */
import { type RectificationClock, rectificationWindow, type StatedStart } from '#intervals';
import type { Basis, DocumentBasis, MelRowBasis } from '../basis.js';
import type { BasisContext, DeferralSettings } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { before, earliest, latest } from '../instant.js';
import type { SignedLimit } from '../signed-limit.js';
import { needZoneData } from '../zone-data.js';
import { admitStated } from './admit-stated.js';
import { readingIntervals } from './reading-intervals.js';

/**
 * `deferredAt` is when it was deferred first, where that is not yet part of its life. Throws Refusal
 * `interval-cannot-be-computed`.
 */
export function signLimits(
  life: DefectLife,
  basis: Basis,
  { settings, others }: Pick<BasisContext, 'settings' | 'others'>,
  deferredAt: string | null = life.deferral?.deferredAt ?? null,
): SignedLimit[] {
  needZoneData(settings);
  const engine = life.item?.units.length === 1 ? life.item.units[0] : undefined;
  const clockFrom = (
    category: MelRowBasis['category'],
    interval: string,
    recordedAt: string,
    stated?: StatedStart,
  ): RectificationClock =>
    readingIntervals(() =>
      rectificationWindow({
        category,
        interval,
        recordedAt,
        base: settings.base,
        tzdb: settings.tzdb,
        preset: settings.preset,
        ...(engine !== undefined && { engine }),
        ...(stated !== undefined && { stated }),
        // A deferral that is older than the record of the other unit starts nothing of the pair.
        ...(deferredAt !== null && !before(deferredAt, recordedAt) && { deferredAt }),
      }),
    );
  if (basis.kind !== 'mel-row') {
    const { interval, stated } = basis;
    if (interval === undefined) return [{ clock: null, until: basis.until ?? null, pair: false }];
    if (stated !== undefined) admitStated(stated, clockFrom('A', interval, life.recordedAt));
    const clock = clockFrom('A', interval, life.recordedAt, startOfDocument(basis));
    return [{ clock, until: basis.until ?? null, pair: false }];
  }
  const pair = relievesSeveral(basis);
  const start = pair ? pairStart(life, basis, others, settings) : life.recordedAt;
  return basis.intervals.map((interval) => {
    const own = clockFrom(basis.category, interval, start);
    if (basis.stated === undefined) return { clock: own, until: null, pair };
    admitStated(basis.stated, own);
    return { clock: clockFrom(basis.category, interval, start, basis.stated.start), until: null, pair };
  });
}

function startOfDocument({ startsAt, stated }: DocumentBasis): StatedStart | undefined {
  return stated?.start ?? (startsAt === undefined ? undefined : { at: startsAt });
}

/** True when the row allows more than one unit to be down. */
function relievesSeveral({ numberInstalled, numberRequired }: MelRowBasis): boolean {
  return numberRequired < numberInstalled - 1;
}

/** The log time from which the row of a pair counts. */
function pairStart(
  life: DefectLife,
  { entry }: MelRowBasis,
  others: readonly DefectLife[],
  { pairDayZero }: DeferralSettings,
): string {
  const down = others.filter((other) => other.closed === null && other.item?.entry === entry);
  const records = down.map(({ recordedAt }) => recordedAt);
  return pairDayZero === 'last-record'
    ? latest(life.recordedAt, ...records)
    : (earliest([life.recordedAt, ...records]) ?? life.recordedAt);
}
