import type { FlownLeg } from './flown-leg.js';
import type { DatedMessage } from './dated-message.js';
import { byWeight, destinationOf, elementOf } from './statements.js';

/** What a leg shows of its diversion. */
export interface Diverted {
  to: string;
  diverted: NonNullable<FlownLeg['diverted']>;
}

/** The DIV that speaks of a leg: of the same aircraft, to where it arrived, or to anywhere while it is under way. */
export function diversionOf(
  { registration, from, arrivedAt }: { registration: string; from: string; arrivedAt: string | null },
  diversions: readonly DatedMessage[],
): Diverted | null {
  const about = diversions
    .map((message) => ({ message, to: destinationOf(message) }))
    .filter(({ message, to }) => message.registration === registration && to !== null && to !== from)
    .filter(({ to }) => arrivedAt === null || arrivedAt === to)
    .sort(byWeight);
  const [first] = about;
  if (!first) return null;
  const diverted = { from: first.message.station, reason: elementOf(first.message, 'DR')?.code ?? null };
  return { to: first.to as string, diverted };
}
