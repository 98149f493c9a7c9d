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
  const counting = new CountingLegs(settings);
  counting.add(legs);
  return counting.counters();
}

interface Tally extends Omit<UsageCounters, 'flightDays'> {
  days: Set<string>;
}

/** Counts legs as they come, whole and in parts, each once. */
export class CountingLegs {
  private readonly tallies = new Map<string, Tally>();

  constructor(private readonly settings: CountingSettings) {}

  /** @throws RangeError when the base is no zone */
  add(legs: Iterable<FlownLeg>): void {
    const { base, rampReturnMakesFlightDay } = this.settings;
    for (const leg of legs) {
      const tally = this.of(leg.registration);
      const flown = leftTheGround(leg);
      if (flown || (rampReturnMakesFlightDay && leg.ending === 'ramp')) tally.days.add(dayIn(base, leg.offBlockAt));
      tally.flights += flown ? 1 : 0;
      tally.blockMinutes += leg.blockMinutes;
      tally.flightMinutes += leg.flightMinutes;
      tally.cycles += leg.cycles;
      tally.landings += leg.landings;
      tally.incomplete += leg.missing.length > 0 ? 1 : 0;
    }
  }

  counters(): MovementCounters {
    const byRegistration = [...this.tallies]
      .sort(([one], [other]) => (one < other ? -1 : 1))
      .map(([mark, { days, ...tally }]) => [mark, { ...tally, flightDays: days.size }] as const);
    const sum = (counter: keyof UsageCounters) => byRegistration.reduce((total, [, own]) => total + own[counter], 0);
    return {
      flights: sum('flights'),
      flightDays: sum('flightDays'),
      blockMinutes: sum('blockMinutes'),
      flightMinutes: sum('flightMinutes'),
      cycles: sum('cycles'),
      landings: sum('landings'),
      incomplete: sum('incomplete'),
      byRegistration: Object.fromEntries(byRegistration),
    };
  }

  private of(registration: string): Tally {
    const known = this.tallies.get(registration);
    if (known) return known;
    const none = { flights: 0, blockMinutes: 0, flightMinutes: 0, cycles: 0, landings: 0, incomplete: 0 };
    const fresh = { ...none, days: new Set<string>() };
    this.tallies.set(registration, fresh);
    return fresh;
  }
}

function dayIn(base: string, instant: string): string {
  // Instants here are written in UTC, and so is their day.
  if (base === 'UTC') return instant.slice(0, 10);
  return Temporal.Instant.from(instant).toZonedDateTimeISO(base).toPlainDate().toString();
}
