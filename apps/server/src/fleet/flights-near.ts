import type { FlightRow, Tx } from '#store';

/** A flight of more than this is none. */
export const LONGEST_MS = 24 * 60 * 60_000;

export interface Span {
  offBlockAt: string;
  onBlockAt: string | null;
}

export interface FlightsNear {
  /** All that are not cancelled and may overlap the new flights or leave on the same UTC day; those that left included. */
  standing: readonly FlightRow[];
  /** Those of them that keep their aircraft: a flight that left does until a leg tells that it is on blocks. */
  holding: readonly FlightRow[];
}

/** Of these aircraft, near flights that somebody wants to plan. One question, bounded by time and by no number. */
export async function flightsNear(
  tx: Tx,
  aircraftIds: readonly string[],
  wanted: readonly Span[],
  now: string,
): Promise<FlightsNear> {
  if (wanted.length === 0) return { standing: [], holding: [] };
  const [first, last] = [wanted.map(({ offBlockAt }) => offBlockAt).toSorted(), wanted.flatMap(ends).toSorted()];
  const from = new Date(Date.parse(first[0] ?? now) - LONGEST_MS).toISOString();
  const standing = await tx.flights.between(aircraftIds, from, last.at(-1) ?? now);
  const left = standing.filter(({ offBlockAt }) => offBlockAt <= now).map(({ id }) => id);
  const over = await tx.flights.onBlocks(left);
  return { standing, holding: standing.filter(({ id }) => !over.has(id)) };
}

/** Whether one aircraft would be on both at once. */
export function overlaps(one: Span, other: Span): boolean {
  return one.offBlockAt < endOf(other) && other.offBlockAt < endOf(one);
}

/** When it is on blocks, and when the UTC day is over on which it leaves. */
function ends({ offBlockAt, onBlockAt }: Span): string[] {
  return [`${offBlockAt.slice(0, 10)}T23:59:59.999Z`, onBlockAt ?? offBlockAt];
}

/** A flight that nobody said the end of keeps the aircraft at the instant it leaves. */
function endOf({ offBlockAt, onBlockAt }: Span): string {
  return onBlockAt ?? new Date(Date.parse(offBlockAt) + 1).toISOString();
}
