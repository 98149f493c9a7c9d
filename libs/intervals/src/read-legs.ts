import { Temporal } from 'temporal-polyfill';
import { dayOf } from './calendar-day.js';
import { readInstant, readMilliseconds } from './instant.js';
import type { Leg } from './leg.js';
import { checkWholeNumbers } from './whole-numbers.js';

export interface ReadLeg {
  leg: Leg;
  offBlock: Temporal.Instant;
  /** Its day by base, where it was asked for. */
  days: Map<string, string>;
}

/** A leg reads the same however many clocks count it. It is never changed in place: a correction is another leg. */
const READ = new WeakMap<Leg, ReadLeg>();

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

/** The calendar day in the base on which it left the blocks. */
export function dayOfLeg({ offBlock, days }: ReadLeg, base: string): string {
  const known = days.get(base);
  if (known !== undefined) return known;
  const day = dayOf(offBlock, base).toString();
  days.set(base, day);
  return day;
}

function readLeg(leg: Leg, index: number): ReadLeg {
  const known = READ.get(leg);
  if (known !== undefined) return known;
  const read = checkedLeg(leg, index);
  READ.set(leg, read);
  return read;
}

function checkedLeg(leg: Leg, index: number): ReadLeg {
  checkWholeNumbers(`legs[${index}]`, leg, ['blockMinutes', 'flightMinutes', 'cycles', 'landings']);
  for (const [position, use] of Object.entries(leg.engines ?? {})) {
    checkWholeNumbers(`legs[${index}].engines.${position}`, use, ['minutes', 'cycles']);
  }
  for (const time of ['airborneAt', 'landedAt', 'onBlockAt'] as const) {
    if (leg[time] !== undefined) readMilliseconds(`legs[${index}].${time}`, leg[time]);
  }
  return { leg, offBlock: readInstant(`legs[${index}].offBlockAt`, leg.offBlockAt), days: new Map() };
}
