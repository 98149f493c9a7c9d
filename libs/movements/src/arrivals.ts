import { byArrival, byWeight, isKnownTo, type Departure, type Landing } from './statements.js';

/** Everything said about one landing, the statement that counts first. */
export interface Arrival {
  landings: Landing[];
}

/** Two landings of one aircraft at one station are one, unless a departure lies between them. */
export function arrivalsOf(landings: readonly Landing[], departures: readonly Departure[]): Arrival[] {
  const arrivals: Arrival[] = [];
  const originals = landings.filter(({ message }) => !message.correction);
  for (const landing of [...originals].sort((one, other) => one.end - other.end || byArrival(one, other))) {
    const same = arrivals.find(({ landings: [first] }) => first && isSameLanding(first, landing, departures));
    if (same) same.landings.push(landing);
    else arrivals.push({ landings: [landing] });
  }
  const corrections = landings.filter(({ message }) => message.correction).sort(byArrival);
  for (const correction of corrections) {
    const meant = correctedBy(correction, arrivals);
    if (meant) meant.landings.push(correction);
    else arrivals.push({ landings: [correction] });
  }
  for (const arrival of arrivals) arrival.landings.sort(byWeight);
  return arrivals.sort((one, other) => endOf(one) - endOf(other));
}

/** Touch-down, or on-block where that was not sent, by the statement that counts. */
export function endOf({ landings }: Arrival): number {
  return (landings[0] as Landing).end;
}

function isSameLanding(first: Landing, landing: Landing, departures: readonly Departure[]): boolean {
  const { registration, station } = first.message;
  if (landing.message.registration !== registration || landing.message.station !== station) return false;
  return !departures.some(
    ({ message, start }) => message.registration === registration && first.end < start && start < landing.end,
  );
}

/** The landing that a correction means, of those it can know of: at the same station and nearest, else the nearest. */
function correctedBy(correction: Landing, arrivals: readonly Arrival[]): Arrival | undefined {
  const distance = (arrival: Arrival) =>
    Math.min(...arrival.landings.map(({ end }) => Math.abs(end - correction.end)));
  const known = arrivals
    .filter(({ landings }) => landings.some((said) => isKnownTo(said, correction) || overlaps(said, correction)))
    .sort((one, other) => distance(one) - distance(other) || endOf(one) - endOf(other));
  const here = known.find(({ landings }) =>
    landings.some((said) => said.message.station === correction.message.station),
  );
  return here ?? known[0];
}

function overlaps(said: Landing, correction: Landing): boolean {
  if (said.message.station !== correction.message.station) return false;
  return said.end <= (correction.onBlock ?? correction.end) && correction.end <= (said.onBlock ?? said.end);
}
