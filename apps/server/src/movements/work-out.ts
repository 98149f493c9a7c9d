/** What is to be written once everything about some flights is gathered. It decides; it writes nothing. */
import type { FlightRow, LegRow, MovementMessageRow } from '#store';
import { type Gathered, keyOf, type Waiting } from './gather.js';
import { contentIn, type LegContent, overlap, sameContent, withdrawn } from './leg-content.js';
import { matchLegs } from './match-legs.js';
import { planOfLeg } from './plan-of-leg.js';

export interface Besides {
  /** Every version of the legs that a person entered or corrected. */
  byPeople: readonly LegRow[];
  flights: readonly FlightRow[];
  airlineCodes: Readonly<Record<string, string>>;
}

/** A version to be added to a leg, or the first of a new one. */
export interface NextVersion {
  of: LegRow | null;
  content: LegContent;
  messageId: string | null;
}

export interface WorkedOut {
  versions: NextVersion[];
  /** All that waits about these messages now. */
  waiting: Waiting[];
}

/**
 * A leg that a person entered or corrected stands until a person changes it. Where messages tell of the same time they are
 * set aside, and one that came afterwards and says otherwise goes to the tray.
 */
export function workOut({ messages, told, waiting, stored }: Gathered, besides: Besides): WorkedOut {
  const held = told.map((leg) => ({ leg, person: holderOf(leg, besides.byPeople) }));
  const free = held.filter(({ person }) => person === null).map(({ leg }) => planned(leg, besides));
  const flights = new Set([...free, ...stored].map(keyOf));
  const versions = [...flights].flatMap((flight) => {
    const ofFlight = <L extends LegContent>(legs: readonly L[]) => legs.filter((leg) => keyOf(leg) === flight);
    return nextVersions(ofFlight(stored.filter(({ source }) => source === 'messages')), ofFlight(free), messages);
  });
  const differing = held.flatMap(({ leg, person }) => (person ? saysOtherwise(leg, person, messages) : []));
  return { versions, waiting: [...waiting, ...differing] };
}

function nextVersions(
  stored: readonly LegRow[],
  told: readonly LegContent[],
  messages: readonly MovementMessageRow[],
): NextVersion[] {
  const { pairs, gone } = matchLegs(stored, told);
  const changed = pairs
    .filter(({ stored: of, told: leg }) => of === null || !sameContent(contentIn(of), leg))
    .map(({ stored: of, told: content }) => ({ of, content }));
  const over = gone.filter(({ ending }) => ending !== 'withdrawn').map((of) => ({ of, content: withdrawn(of) }));
  return [...changed, ...over].map((next) => ({
    ...next,
    messageId: newestAbout(next.content, messages)?.id ?? null,
  }));
}

function planned(leg: LegContent, { flights, airlineCodes }: Besides): LegContent {
  return { ...leg, flightId: planOfLeg(leg, flights, airlineCodes) };
}

/** The person's newest version of the leg that this one would be; an earlier version of it counts as its time, too. */
function holderOf(leg: LegContent, byPeople: readonly LegRow[]): LegRow | null {
  const same = byPeople.find((version) => version.aircraftId === leg.aircraftId && overlap(version, leg));
  return same ? (byPeople.findLast(({ id }) => id === same.id) ?? null) : null;
}

function saysOtherwise(leg: LegContent, person: LegRow, messages: readonly MovementMessageRow[]): Waiting[] {
  const newest = newestAbout(leg, messages);
  const times = ['ending', 'offBlockAt', 'airborneAt', 'landedAt', 'onBlockAt', 'toStation'] as const;
  const differs = times.some((time) => leg[time] !== person[time]);
  if (!differs || !newest || newest.enteredAt <= person.writtenAt) return [];
  const sentence = `${leg.flight} of ${leg.scheduledOn} is told otherwise than a person entered it; what was entered stands.`;
  return [{ messageId: newest.id, reason: 'differs-from-person', sentence }];
}

/** The message that came last about a leg: of its flight and, where there is one, of its aircraft. */
function newestAbout(leg: LegContent, messages: readonly MovementMessageRow[]): MovementMessageRow | null {
  const about = messages.filter((message) => keyOf(message) === keyOf(leg));
  const ofAircraft = about.filter(({ aircraftId }) => aircraftId === leg.aircraftId);
  const [newest] = (ofAircraft.length > 0 ? ofAircraft : about).toSorted(
    (one, other) => other.enteredAt.localeCompare(one.enteredAt) || other.receivedAt.localeCompare(one.receivedAt),
  );
  return newest ?? null;
}
