import { Temporal } from 'temporal-polyfill';
import { leftTheGround } from './counted-leg.js';
import type { FlownLeg } from './flown-leg.js';
import type { ReadingSettings } from './settings.js';

/** What a set of legs used. Minutes are integers, so that three legs of 0:20 make 1:00. */
export interface UsageCounters {
  /** Legs on which the aircraft left the ground. */
  flights: number;
  /** Days in the base on which such a leg began; several aircraft on one day count each. */
  flightDays: number;
  blockMinutes: number;
  /** Off the ground to touch-down. */
  flightMinutes: number;
  cycles: number;
  /** Kept apart from cycles: how a touch-and-go counts depends on the type. No message reports one. */
  landings: number;
  /** Legs with a time not known; each is named in its `missing`. */
  incomplete: number;
}

export interface MovementCounters extends UsageCounters {
  byRegistration: Record<string, UsageCounters>;
}

type CountingSettings = Pick<ReadingSettings, 'base' | 'rampReturnMakesFlightDay'>;

/** @throws RangeError when the base is no zone */
export function countersOf(legs: readonly FlownLeg[], settings: CountingSettings): MovementCounters {
  const byRegistration = new Map<string, FlownLeg[]>();
  for (const leg of legs) {
    const others = byRegistration.get(leg.registration);
    if (others) others.push(leg);
    else byRegistration.set(leg.registration, [leg]);
  }
  const registrations = [...byRegistration].sort(([one], [other]) => (one < other ? -1 : 1));
  return {
    ...counted(legs, settings),
    byRegistration: Object.fromEntries(registrations.map(([mark, own]) => [mark, counted(own, settings)])),
  };
}

function counted(legs: readonly FlownLeg[], { base, rampReturnMakesFlightDay }: CountingSettings): UsageCounters {
  const sum = (read: (leg: FlownLeg) => number) => legs.reduce((total, leg) => total + read(leg), 0);
  const starting = legs.filter((leg) => leftTheGround(leg) || (rampReturnMakesFlightDay && leg.ending === 'ramp'));
  return {
    flights: legs.filter(leftTheGround).length,
    flightDays: new Set(starting.map(({ registration, offBlockAt }) => `${registration} ${dayIn(base, offBlockAt)}`))
      .size,
    blockMinutes: sum((leg) => leg.blockMinutes),
    flightMinutes: sum((leg) => leg.flightMinutes),
    cycles: sum((leg) => leg.cycles),
    landings: sum((leg) => leg.landings),
    incomplete: legs.filter(({ missing }) => missing.length > 0).length,
  };
}

function dayIn(base: string, instant: string): string {
  // Instants here are written in UTC, and so is their day.
  if (base === 'UTC') return instant.slice(0, 10);
  return Temporal.Instant.from(instant).toZonedDateTimeISO(base).toPlainDate().toString();
}
