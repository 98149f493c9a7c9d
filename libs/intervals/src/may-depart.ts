import { dayOf } from './calendar-day.js';
import type { RectificationClock } from './clock.js';
import { endOf } from './counted-clock.js';
import { readInstant } from './instant.js';
import type { Limit } from './interval-text.js';
import type { LimitAnswer, PlannedLeg } from './limit-answer.js';
import { askFixedEnd } from './limits/fixed-end.js';
import { askFlightDays } from './limits/flight-days.js';
import { askHours, askNumber } from './limits/number-limit.js';
import { countingSettings, type CountingSettings } from './settings.js';
import { checkUsed, type Used } from './used.js';
import { checkWholeNumbers } from './whole-numbers.js';

/** Whether the interval lets a flight depart, with the arithmetic, limit by limit. */
export interface DepartureAnswer {
  answer: 'holds' | 'fails' | 'unknown';
  /** The sentences that decide: those that fail, else those not known, else all. */
  because: string;
  limits: LimitAnswer[];
}

/**
 * May this flight depart as far as the interval is concerned? Of several limits each must hold ("first of").
 *
 * `used` is what countUsed made of the legs flown before this flight; a missing counter that matters is `unknown`.
 * Throws IntervalInputError for times and numbers that cannot be.
 */
export function mayDepart(
  clock: RectificationClock,
  flight: PlannedLeg,
  used: Used = {},
  settings: Partial<CountingSettings> = {},
): DepartureAnswer {
  checkWholeNumbers('flight', flight, ['flightMinutes', 'blockMinutes', 'cycles']);
  checkUsed(used);
  const limits = clock.limits.map((limit) => ask(limit, clock, flight, used, countingSettings(undefined, settings)));
  const failing = limits.filter((limit) => limit.answer === 'fails');
  const open = limits.filter((limit) => limit.answer === 'unknown');
  const deciding = failing.length ? failing : open.length ? open : limits;
  return {
    answer: failing.length ? 'fails' : open.length ? 'unknown' : 'holds',
    because: deciding.map((limit) => limit.because).join(' '),
    limits,
  };
}

function ask(
  limit: Limit,
  clock: RectificationClock,
  flight: PlannedLeg,
  used: Used,
  settings: CountingSettings,
): LimitAnswer {
  const offBlock = readInstant('flight.offBlockAt', flight.offBlockAt);
  const block = settings.hourClock === 'block';
  switch (limit.unit) {
    case 'calendar-days':
    case 'hours': {
      const onBlock = flight.onBlockAt === undefined ? null : readInstant('flight.onBlockAt', flight.onBlockAt);
      return askFixedEnd(limit, endOf(limit, clock), clock.base, offBlock, onBlock, settings);
    }
    case 'flight-days':
      return askFlightDays(limit, used, clock.dayOfDiscovery, dayOf(offBlock, clock.base).toString());
    case 'flights':
      return askNumber(limit, used.flights, 1);
    case 'cycles':
      return askNumber(limit, used.cycles, flight.cycles ?? 1);
    case 'flight-hours':
      return askHours(
        limit,
        block ? used.blockMinutes : used.flightMinutes,
        block ? flight.blockMinutes : flight.flightMinutes,
        settings.hoursCountedAt,
      );
  }
}
