import { Temporal } from 'temporal-polyfill';
import { readInstant } from './instant.js';
import type { Leg } from './leg.js';
import { checkWholeNumbers } from './whole-numbers.js';

export interface ReadLeg {
  leg: Leg;
  offBlock: Temporal.Instant;
}

/** Legs with their instants read, in the order flown. Throws IntervalInputError naming the place in the list. */
export function readLegs(legs: readonly Leg[]): ReadLeg[] {
  return legs.map(readLeg).sort((one, other) => Temporal.Instant.compare(one.offBlock, other.offBlock));
}

/** When it was last on the move, as far as that is known. */
export function endOfLeg({ onBlockAt, landedAt, airborneAt, offBlockAt }: Leg): string {
  return onBlockAt ?? landedAt ?? airborneAt ?? offBlockAt;
}

export function isAfter(one: Temporal.Instant, other: Temporal.Instant): boolean {
  return Temporal.Instant.compare(one, other) > 0;
}

function readLeg(leg: Leg, index: number): ReadLeg {
  checkWholeNumbers(`legs[${index}]`, leg, ['blockMinutes', 'flightMinutes', 'cycles', 'landings']);
  for (const [position, use] of Object.entries(leg.engines ?? {})) {
    checkWholeNumbers(`legs[${index}].engines.${position}`, use, ['minutes', 'cycles']);
  }
  for (const time of ['airborneAt', 'landedAt', 'onBlockAt'] as const) {
    if (leg[time] !== undefined) readInstant(`legs[${index}].${time}`, leg[time]);
  }
  return { leg, offBlock: readInstant(`legs[${index}].offBlockAt`, leg.offBlockAt) };
}
