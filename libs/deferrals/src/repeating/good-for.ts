/**
 * Whether work that was signed is still good for one departure, by how often the row wants it. What is not known is not
 * good.
 */
import {
  countUsed,
  dayOf,
  mayDepart,
  readInstant,
  rectificationWindow,
  type CountingSettings,
  type RectificationClock,
} from '#intervals';
import type { Repeat } from '#mel';
import type { ProcedureDone } from '../defect-life.js';
import { before } from '../instant.js';
import type { Departure } from './obligation.js';

export interface Counting {
  /** UTC or one IANA zone: the operator's days. */
  base: string;
  tzdb: string;
  counting?: Partial<CountingSettings>;
}

export interface Goodness {
  good: 'yes' | 'no' | 'not-known';
  because: string;
}

/** @param earlier every departure before this one, in order, flown as planned where it is still to come */
export function goodFor(
  done: ProcedureDone,
  repeat: Repeat,
  departure: Departure,
  earlier: readonly Departure[],
  counting: Counting,
): Goodness {
  const { offBlockAt } = departure.leg;
  const { doneAt, validUntil } = done;
  if (validUntil !== null && before(validUntil, offBlockAt)) {
    return { good: 'no', because: `It was done ${doneAt} and good until ${validUntil}, before this departure.` };
  }
  if (repeat === 'once') return { good: 'yes', because: `It was done ${doneAt}.` };
  if (repeat === 'each-departure') return forThisDeparture(done, departure, earlier);
  if (repeat === 'each-flight-day') return onThisDay(doneAt, offBlockAt, counting.base);
  return insideInterval(doneAt, repeat, departure, earlier, counting);
}

/** Good for the flight that it names alone; where nobody knows which flight left, for the next departure after it. */
function forThisDeparture(
  { doneAt, forFlight }: ProcedureDone,
  { flight }: Departure,
  earlier: readonly Departure[],
): Goodness {
  if (flight === null) return forNextDeparture(doneAt, earlier);
  if (forFlight === flight) return { good: 'yes', because: `It was done ${doneAt} for this flight.` };
  const other = forFlight === null ? 'no named flight' : 'another flight';
  return { good: 'no', because: `It is owed before each departure and was last signed ${doneAt} for ${other}.` };
}

function forNextDeparture(doneAt: string, earlier: readonly Departure[]): Goodness {
  const since = earlier.some(({ leg }) => !before(leg.offBlockAt, doneAt));
  return since
    ? { good: 'no', because: `It is owed before each departure; the aircraft left since it was done ${doneAt}.` }
    : { good: 'yes', because: `It was done ${doneAt}, and this is the next departure.` };
}

function onThisDay(doneAt: string, offBlockAt: string, base: string): Goodness {
  const [done, leaves] = [dayIn(doneAt, base), dayIn(offBlockAt, base)];
  return done === leaves
    ? { good: 'yes', because: `It was done ${doneAt}, on this flight-day.` }
    : { good: 'no', because: `It is owed once each flight-day and was last done on ${done}.` };
}

function insideInterval(
  doneAt: string,
  repeat: Exclude<Repeat, string>,
  { leg }: Departure,
  earlier: readonly Departure[],
  counting: Counting,
): Goodness {
  const clock = clockSince(doneAt, repeat, counting);
  const legs = earlier.flatMap((one) => (before(one.leg.offBlockAt, doneAt) ? [] : [one.leg]));
  const { answer, because } = mayDepart(
    clock,
    leg,
    countUsed(clock, legs, counting.counting),
    counting.counting ?? {},
  );
  const good = answer === 'holds' ? 'yes' : answer === 'fails' ? 'no' : 'not-known';
  return { good, because: `It is owed every ${intervalOf(repeat)} and was last done ${doneAt}: ${because}` };
}

/** So many hours, flights or days after it was done: the same counting as an interval that began then. */
export function clockSince(
  doneAt: string,
  repeat: Exclude<Repeat, string>,
  { base, tzdb }: Counting,
): RectificationClock {
  return rectificationWindow({ category: 'A', interval: intervalOf(repeat), recordedAt: doneAt, base, tzdb });
}

export function intervalOf(repeat: Exclude<Repeat, string>): string {
  return 'every' in repeat ? repeat.every : repeat.afterFirstFlightThenEvery;
}

export function dayIn(at: string, base: string): string {
  return dayOf(readInstant('time', at), base).toString();
}
