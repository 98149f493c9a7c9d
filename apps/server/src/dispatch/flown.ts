/** What was flown, where something is counted in it: an interval of flights or hours, or work owed again after so many. */
import { type DefectLife, proceduresOwed } from '#deferrals';
import { countUsed, type CountingSettings, type Leg, rectificationWindow, type Used } from '#intervals';
import type { Repeat } from '#mel';
import type { AircraftRow, Tx } from '#store';
import type { OpenedDefect } from '../defects/defect-book.js';
import { flownLegs, flownLegsOfAll } from '../movements/flown-legs.js';
import type { Proposal } from './readable-gates.js';

/** Legs from the earliest record on; none are read where nothing is counted in them, and nothing else is tried. */
export async function legsFor(
  tx: Tx,
  aircraft: AircraftRow,
  defects: readonly OpenedDefect[],
  proposals: readonly Proposal[],
  at: string,
): Promise<Leg[]> {
  const tried = new Set(proposals.flatMap(({ defect }) => defect ?? []));
  const counted = defects.filter(({ life }) => countsFlights(life) || (life.deferral && tried.has(life.defect)));
  if (counted.length === 0) return [];
  return flownLegs(tx, aircraft.id, countedFrom(counted, at));
}

/** From when legs are read: the earliest record, or a start before it that a document states. */
export function countedFrom(defects: readonly OpenedDefect[], at: string): string {
  const starts = defects.flatMap(({ row, life }) => [
    row.recordedAt,
    ...life.limits.flatMap(({ clock }) => (clock?.kind === 'counted' ? [clock.startsAt] : [])),
  ]);
  return new Date(Math.min(Date.parse(at), ...starts.map((start) => Date.parse(start)))).toISOString();
}

/** The same for several aircraft, with nothing tried. @param fleet open defects by aircraft */
export function legsForAll(tx: Tx, fleet: ReadonlyMap<string, readonly OpenedDefect[]>): Promise<Map<string, Leg[]>> {
  const from = new Map<string, string>();
  for (const [aircraft, defects] of fleet) {
    const counted = defects.filter(({ life }) => countsFlights(life));
    const [one] = counted;
    if (one !== undefined) from.set(aircraft, countedFrom(counted, one.row.recordedAt));
  }
  return flownLegsOfAll(tx, from);
}

/** Whether what is flown uses up anything of a defect. */
export function countsFlights({ limits, deferral }: DefectLife): boolean {
  if (limits.some(({ clock }) => clock?.kind === 'counted')) return true;
  return (
    deferral !== null && proceduresOwed(deferral.basis).some(({ procedure }) => intervalOf(procedure.repeat) !== null)
  );
}

/** The interval after which work is owed again; null where the repeat is no interval. */
function intervalOf(repeat: Repeat | undefined): string | null {
  if (typeof repeat !== 'object') return null;
  return 'every' in repeat ? repeat.every : repeat.afterFirstFlightThenEvery;
}

/** What was used of the first clock signed: used flights and hours count from the start, whatever row was signed since. */
export function usedOf(
  life: DefectLife,
  legs: readonly Leg[],
  counting: Partial<CountingSettings> = {},
): Used | null {
  const clock = life.limits.find((limit) => limit.clock !== null)?.clock;
  return clock ? countUsed(clock, legs, counting) : null;
}

/** What was flown since work was done; null where it is not owed again after an interval. */
export function usedSince(
  repeat: Repeat | undefined,
  doneAt: string,
  legs: readonly Leg[],
  { base, tzdb, counting = {} }: { base: string; tzdb: string; counting?: Partial<CountingSettings> },
): Used | null {
  const interval = intervalOf(repeat);
  if (interval === null) return null;
  return countUsed(rectificationWindow({ category: 'A', interval, recordedAt: doneAt, base, tzdb }), legs, counting);
}
