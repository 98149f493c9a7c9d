import { arrivalsOf, endOf, type Arrival } from './arrivals.js';
import { attemptsOf, endingsOf, startOf, type Attempt } from './attempts.js';
import { legOf, legWithoutDeparture, withoutDeparture, type BuiltLeg, type Flown } from './compose-leg.js';
import { endingOf } from './ending.js';
import type { TrayEntry } from './message.js';
import type { DatedMessage } from './dated-message.js';
import { revisionsOf } from './revisions.js';
import type { Departure, Landing, RampReturn } from './statements.js';
import { minutesPerDay } from './utc-minute.js';

/** Everything dated that was said about one flight on one day. */
export interface Statements {
  departures: Departure[];
  arrivals: Landing[];
  returns: Landing[];
  rampReturns: RampReturn[];
  diversions: DatedMessage[];
}

/** The legs of one flight and day in the order flown, worked out from all that was said about it at once. */
export function buildLegs(said: Statements): { legs: BuiltLeg[]; tray: TrayEntry[] } {
  const { departures, returns, rampReturns } = said;
  const attempts = attemptsOf(departures, endingsOf(departures, [...said.arrivals, ...returns, ...rampReturns]));
  const flown = attempts.map((attempt): Flown => {
    const own = <S extends Landing | RampReturn>(all: readonly S[]) =>
      all.filter((one) => attemptOf(one, attempts) === attempt);
    return { attempt, ...endingOf(attempt, own(returns), own(rampReturns)), arrival: null };
  });
  const arrivals = arrivalsOf(said.arrivals, departures);
  const alone = arrivals.filter((arrival) => !putOn(flown, arrival));
  const strayed = <S extends Landing | RampReturn>(all: readonly S[]) =>
    all.filter((one) => attemptOf(one, attempts) === null);
  const legs = [
    ...flown.map((one) => legOf(one, said.diversions)),
    ...alone.map((arrival) => legWithoutDeparture(arrival, 'arrived')),
    ...arrivalsOf(strayed(returns), departures).map((arrival) => legWithoutDeparture(arrival, 'returned')),
  ].sort(byStart);
  for (const [index, { leg }] of legs.entries()) leg.sequence = index + 1;
  const tray = [
    ...strayed(rampReturns).map(({ message }) => withoutDeparture(message)),
    ...revisionsOf(attempts, arrivals),
  ];
  return { legs, tray: [...tray, ...legs.flatMap((built) => built.tray)] };
}

/** The attempt that a return belongs to: the aircraft's last departure before it, if that was from the same station. */
function attemptOf({ message, end }: Landing | RampReturn, attempts: readonly Attempt[]): Attempt | null {
  const last = attempts.findLast(
    (attempt) => attempt.departures[0]?.message.registration === message.registration && startOf(attempt) <= end,
  );
  return last?.departures[0]?.message.station === message.station ? last : null;
}

/** Puts an arrival on the aircraft's last departure before it; false where that one did not lead there. */
function putOn(flown: readonly Flown[], arrival: Arrival): boolean {
  const end = endOf(arrival);
  const registration = arrival.landings[0]?.message.registration;
  const last = flown.findLast(
    ({ attempt }) => attempt.departures[0]?.message.registration === registration && startOf(attempt) < end,
  );
  if (!last || last.ending !== 'open' || last.arrival) return false;
  const left = last.times.airborne ?? startOf(last.attempt);
  if (end <= left || end - left >= minutesPerDay) return false;
  last.arrival = arrival;
  return true;
}

function byStart({ leg: one }: BuiltLeg, { leg: other }: BuiltLeg): number {
  const key = (leg: BuiltLeg['leg']) => `${leg.offBlockAt} ${leg.registration} ${leg.from ?? ''} ${leg.to ?? ''}`;
  return key(one) < key(other) ? -1 : 1;
}
