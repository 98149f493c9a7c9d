import type { DatedMessage } from './dated-message.js';
import { byArrival, byWeight, isKnownTo, type Departure, type Landing, type RampReturn } from './statements.js';

/**
 * One attempt to fly a leg: everything said about one departure of one aircraft from one station. It begins off blocks
 * and ends on the ramp (RR), back where it left from (FR), or at another airport (AA); the next AD under the same flight
 * and day then opens another. A second AD with nothing in between only says the first one better.
 */
export interface Attempt {
  /** The one that counts first. */
  departures: Departure[];
}

/** An instant that ends an attempt, so that a later departure is another one. */
export interface Ending {
  registration: string;
  at: number;
}

export function attemptsOf(departures: readonly Departure[], endings: readonly Ending[]): Attempt[] {
  const originals = departures.filter(({ message }) => !message.correction);
  const attempts = grouped(originals, endings).map((said) => ({ departures: said }));
  const corrections = departures.filter(({ message }) => message.correction).sort(byArrival);
  for (const correction of corrections) {
    const meant = correctedBy(correction, attempts);
    if (meant) meant.departures.push(correction);
    else attempts.push({ departures: [correction] });
  }
  for (const attempt of attempts) attempt.departures.sort(byWeight);
  return attempts.sort((one, other) => startOf(one) - startOf(other));
}

/** When the attempt began, by the statement that counts. */
export function startOf({ departures }: Attempt): number {
  return (departures[0] as Departure).start;
}

/** A movement as a person would look it up: `ZZ200 of 2026-01-21, QABAX at QXA`. */
export function nameOf({ flight, scheduledOn, registration, station }: DatedMessage): string {
  return `${flight} of ${scheduledOn}, ${registration} at ${station},`;
}

export function endingsOf(departures: readonly Departure[], landings: readonly (Landing | RampReturn)[]): Ending[] {
  const ramp = departures.flatMap(({ message, rampReturn }) =>
    rampReturn === null || message.correction ? [] : [{ registration: message.registration, at: rampReturn }],
  );
  return [...ramp, ...landings.map(({ message, end }) => ({ registration: message.registration, at: end }))];
}

function grouped(originals: readonly Departure[], endings: readonly Ending[]): Departure[][] {
  const groups: Departure[][] = [];
  const last = new Map<string, Departure[]>();
  for (const departure of [...originals].sort((one, other) => one.start - other.start || byArrival(one, other))) {
    const { registration, station } = departure.message;
    const open = last.get(registration);
    const before = open?.at(-1);
    if (open && before?.message.station === station && !endsBetween(endings, before, departure)) {
      open.push(departure);
      continue;
    }
    const group = [departure];
    groups.push(group);
    last.set(registration, group);
  }
  return groups;
}

function endsBetween(endings: readonly Ending[], before: Departure, after: Departure): boolean {
  return endings.some(
    ({ registration, at }) => registration === before.message.registration && before.start < at && at <= after.start,
  );
}

/**
 * The attempt that a correction means, of those it can know of: the one off blocks at the same minute, else the nearest
 * that ended the same way, else the nearest. A registration may be what is corrected, so it does not matter.
 */
function correctedBy(correction: Departure, attempts: readonly Attempt[]): Attempt | undefined {
  const distance = (attempt: Attempt) =>
    Math.min(...attempt.departures.map(({ start }) => Math.abs(start - correction.start)));
  const known = attempts
    .filter(({ departures }) => departures.some((said) => isAbout(said, correction)))
    .sort((one, other) => distance(one) - distance(other) || startOf(one) - startOf(other));
  const sameWay = known.find(({ departures }) =>
    departures.some(({ rampReturn }) => (rampReturn === null) === (correction.rampReturn === null)),
  );
  return known.find((attempt) => distance(attempt) === 0) ?? sameWay ?? known[0];
}

/** Received before the correction, or held up on the way though it speaks of the same minutes. */
function isAbout(said: Departure, correction: Departure): boolean {
  if (said.message.station !== correction.message.station) return false;
  const end = ({ rampReturn, airborne, start }: Departure) => rampReturn ?? airborne ?? start;
  const overlaps = said.start <= end(correction) && correction.start <= end(said);
  return isKnownTo(said, correction) || overlaps;
}
