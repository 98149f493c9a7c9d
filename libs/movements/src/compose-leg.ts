import { type Arrival } from './arrivals.js';
import { nameOf, type Attempt } from './attempts.js';
import { diversionOf } from './diversions.js';
import { landingTimes, type AttemptEnding } from './ending.js';
import { countedLeg, type FlownLeg, type LegEnding } from './flown-leg.js';
import { inOrder } from './leg-times.js';
import type { TrayEntry } from './message.js';
import type { DatedMessage } from './dated-message.js';
import { delaysOf, destinationOf, type Departure, type Landing } from './statements.js';
import { trayEntryFor } from './tray.js';

/** A leg with the message that counts first for it, where a person would look. Its sequence is set at the end. */
export interface BuiltLeg {
  leg: FlownLeg;
  message: DatedMessage;
  tray: TrayEntry[];
}

/** An attempt with how it ended and the arrival that belongs to it. */
export interface Flown extends AttemptEnding {
  attempt: Attempt;
  arrival: Arrival | null;
}

export function legOf(
  { attempt, ending, times, arrival, tray }: Flown,
  diversions: readonly DatedMessage[],
): BuiltLeg {
  const { message } = attempt.departures[0] as Departure;
  const { flight, scheduledOn, registration, station: from } = message;
  const arrivedAt = arrival?.landings[0]?.message.station ?? null;
  const how: LegEnding = arrival ? 'arrived' : ending === 'open' ? 'under-way' : ending;
  const { times: ordered, broken } = inOrder(arrival ? { ...times, ...landingTimes(arrival.landings) } : times);
  const elsewhere = how === 'arrived' || how === 'under-way';
  const diversion = elsewhere ? diversionOf({ registration, from, arrivedAt }, diversions) : null;
  const bound = diversion?.to ?? firstOf(attempt, ({ message: said }) => destinationOf(said));
  const disorder = `${nameOf(message)} is reported with times that contradict each other; some were left out.`;
  return {
    leg: {
      ...countedLeg(ordered, how),
      flight,
      scheduledOn,
      registration,
      from,
      to: arrivedAt ?? (elsewhere ? bound : from),
      ending: how,
      sequence: 0,
      ...(diversion && { diverted: diversion.diverted }),
      delays: firstOf(attempt, ({ message: said }) => (delaysOf(said).length > 0 ? delaysOf(said) : null)) ?? [],
    },
    message,
    tray: broken ? [...tray, trayEntryFor(message, 'order', disorder)] : tray,
  };
}

/** An arrival proves that a flight took place, so it is counted, with what is not known named and a person asked. */
export function legWithoutDeparture({ landings }: Arrival, ending: 'arrived' | 'returned'): BuiltLeg {
  const { message } = landings[0] as Landing;
  const { flight, scheduledOn, registration, station } = message;
  const { times } = inOrder({ offBlock: null, airborne: null, ...landingTimes(landings) });
  const place = { from: ending === 'returned' ? station : null, to: station };
  const leg = {
    ...countedLeg(times, ending),
    flight,
    scheduledOn,
    registration,
    ...place,
    ending,
    sequence: 0,
    delays: [],
  };
  return { leg, message, tray: [withoutDeparture(message)] };
}

export function withoutDeparture(message: DatedMessage): TrayEntry {
  return trayEntryFor(message, 'no-departure', `${nameOf(message)} has no departure that leads to it.`);
}

function firstOf<T>({ departures }: Attempt, read: (departure: Departure) => T | null): T | null {
  for (const departure of departures) {
    const found = read(departure);
    if (found !== null) return found;
  }
  return null;
}
