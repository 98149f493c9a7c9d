/**
 * Which stored leg is which of those that messages tell now.
 *
 * Legs are worked out whole each time, so what ties them to what was told before is found anew: the same off-block first,
 * then any other time they share, then the order flown. A leg keeps its identity while its times are corrected; what is
 * left over on the stored side turned out not to be a leg.
 */
import type { LegContent } from './leg-content.js';

type Times = Pick<LegContent, 'sequence' | 'offBlockAt' | 'airborneAt' | 'landedAt' | 'onBlockAt'>;

export interface Matched<Stored, Told> {
  pairs: { stored: Stored | null; told: Told }[];
  gone: Stored[];
}

/** Of one flight and day. */
export function matchLegs<Stored extends Times, Told extends Times>(
  stored: readonly Stored[],
  told: readonly Told[],
): Matched<Stored, Told> {
  const free = stored.toSorted(bySequence);
  const found = new Map<Told, Stored>();
  const inOrder = told.toSorted(bySequence);
  for (const isSame of [sameStart, sameMoment, () => true]) {
    for (const leg of inOrder) {
      if (found.has(leg)) continue;
      const at = free.findIndex((one) => isSame(one, leg));
      const [match] = at < 0 ? [] : free.splice(at, 1);
      if (match) found.set(leg, match);
    }
  }
  return { pairs: inOrder.map((leg) => ({ stored: found.get(leg) ?? null, told: leg })), gone: free };
}

function sameStart(one: Times, other: Times): boolean {
  return one.offBlockAt === other.offBlockAt;
}

function sameMoment(one: Times, other: Times): boolean {
  return (['airborneAt', 'landedAt', 'onBlockAt'] as const).some(
    (time) => one[time] !== null && one[time] === other[time],
  );
}

function bySequence(one: Times, other: Times): number {
  return one.sequence - other.sequence;
}
