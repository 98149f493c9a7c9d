/** What people state of the engines of an aircraft, as libs/intervals counts it. */
import { type EngineCounts, type Leg, withEngines } from '#intervals';
import type { EngineCountRow, Tx } from '#store';
import { settingsOf } from '../../people/operator-settings.js';

export function engineCountsOf(rows: readonly EngineCountRow[]): EngineCounts {
  return {
    readings: rows.flatMap(({ kind, position, serial, at, minutes, cycles }) =>
      kind === 'reading' && serial !== null ? [{ position, serial, readAt: at, minutes, cycles }] : [],
    ),
    runs: rows.flatMap(({ kind, position, at, minutes, cycles }) =>
      kind === 'run' ? [{ position, at, minutes, cycles }] : [],
    ),
  };
}

/** The hours that this operator counts: airborne, or off blocks to on blocks. */
export async function hourClockOf(tx: Tx) {
  return settingsOf(await tx.operators.current(), 'not asked').deferral.counting.hourClock;
}

/**
 * Legs from an instant on, with what was stated of the engines. A reading is held against the legs since the one before
 * it, so where there are readings older legs are read, too, and left out again.
 */
export async function legsWithEngines(
  tx: Tx,
  aircraftId: string,
  from: string,
  legsFrom: (first: string) => Promise<Leg[]>,
): Promise<Leg[]> {
  const rows = await tx.engineCounts.inForce(aircraftId);
  if (rows.length === 0) return legsFrom(from);
  const before = rows.filter(({ kind, at }) => kind === 'reading' && at < from);
  const last = new Map(before.map((row) => [row.position, row.at]));
  const first = [from, ...last.values()].toSorted()[0] ?? from;
  const since = rows.filter(({ at }) => at >= first);
  const legs = withEngines(await legsFrom(first), engineCountsOf(since), await hourClockOf(tx));
  const kept = first === from ? legs : legs.filter((leg) => wasUnderWay(leg, from));
  return kept.toSorted((one, other) => Date.parse(one.offBlockAt) - Date.parse(other.offBlockAt));
}

const DAY = 86_400_000;

function wasUnderWay({ offBlockAt }: Leg, from: string): boolean {
  return Date.parse(offBlockAt) >= Date.parse(from) - 2 * DAY;
}
