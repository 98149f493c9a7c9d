/**
 * May the aircraft leave on this flight, as far as this one defect is concerned? No dispatch past the deadline, with an
 * unanswered write-up or open work, or with a procedure or placard of the basis missing. An answer, not a refusal.
 *
 * Whether the provisos hold, alone and together with the other open items, is judged elsewhere.
 * 14 CFR 121.563, 121.628; ORO.MLR.105.
 */
import { mayDepart, type CountingSettings, type Used } from '#intervals';
import { withDone } from '../deferring/done-within.js';
import { readingIntervals } from '../deferring/reading-intervals.js';
import type { DefectLife } from '../defect-life.js';
import { before } from '../instant.js';
import { reason, type Reason } from '../refusal.js';
import type { SignedLimit } from '../signed-limit.js';
import { grantFor, type FlightUnderGrant } from './grant-for.js';
import { workOwed } from './work-owed.js';

/** The flight that asks to leave. Instants are ISO 8601 with offset, minutes integers. */
export interface FlightPlanned extends FlightUnderGrant {
  id: string;
}

/** What was used before this flight. A counter that is absent is not known. */
export interface UseBefore {
  used?: Used;
  counting?: Partial<CountingSettings>;
  /** Flights used up of each document of an authority, by its number. */
  flownUnder?: Readonly<Record<string, number>>;
}

export interface DispatchAnswer {
  may: boolean;
  /** The document of an authority without which it may not: "permit PF-12". */
  onlyUnder: string | null;
  /** Empty when it may. */
  because: Reason[];
}

/** Throws Refusal only for times and numbers that cannot be. */
export function mayDispatch(life: DefectLife, flight: FlightPlanned, use: UseBefore = {}): DispatchAnswer {
  if (life.closed !== null) return { may: true, onlyUnder: null, because: [] };
  const blocking = [...unreleased(life), ...notCovered(life), ...workOwed(life, flight)];
  const late = life.deferral === null ? [] : life.limits.flatMap((limit) => outside(life, limit, flight, use));
  const grant = late.length === 0 ? null : grantFor(life, flight, use.flownUnder ?? {});
  const covered = grant?.answer === 'covers';
  const because = [...blocking, ...(covered ? [] : [...late, ...(grant?.because ?? [])])];
  return { may: because.length === 0, onlyUnder: covered ? grant.document : null, because };
}

function unreleased({ defect, deferral, work }: DefectLife): Reason[] {
  if (work !== null) return [reason('open-work', { defect, openedAt: work.openedAt })];
  return deferral === null ? [reason('unanswered', { defect })] : [];
}

/** After a swap the row may name other units than the one that is failed now. */
function notCovered({ deferral, item }: DefectLife): Reason[] {
  if (deferral === null || deferral.basis.kind !== 'mel-row' || item === null) return [];
  const { row, entry, covers } = deferral.basis;
  const uncovered = item.units.filter((unit) => !covers.includes(unit));
  return uncovered.map((unit) => reason('row-not-for-this-unit', { row, entry, covers, unit }));
}

function outside(life: DefectLife, { clock, until }: SignedLimit, flight: FlightPlanned, use: UseBefore): Reason[] {
  const { defect } = life;
  const { counting } = use;
  const used = withDone(use.used ?? {}, life);
  const inside = clock === null ? null : readingIntervals(() => mayDepart(clock, flight, used, counting));
  const late = inside !== null && inside.answer !== 'holds' ? [inside.because] : [];
  const leavesAt = counting?.expiryInFlight === 'arrival-inside' ? flight.onBlockAt : flight.offBlockAt;
  if (until !== null && (leavesAt === undefined || !before(leavesAt, until)))
    late.push(`The document ends at ${until}.`);
  return late.map((because) => reason('past-the-deadline', { defect, because }));
}
