/**
 * Everything that the legs of some flights are worked out from.
 *
 * A flight's legs follow from all its messages. Whether a leg whose arrival was never reported counts as a cycle follows
 * from the aircraft departing again, so the flights before and after are read too: those beside are worked out anew with
 * it, and those beside them are read only so that each leg sees the one after it.
 */
import { type FlownLeg, readMovements } from '#movements';
import type { FlightOfDay, LegPlace, LegRow, MovementMessageRow, Tx } from '#store';
import { contentOf, type LegContent } from './leg-content.js';
import type { Reading, WhyInTray } from './reading.js';

/** Something about a message that a person should look at. */
export interface Waiting {
  messageId: string;
  reason: WhyInTray;
  sentence: string;
}

/** About the flights that are worked out anew, and no others. */
export interface Gathered {
  messages: MovementMessageRow[];
  told: LegContent[];
  waiting: Waiting[];
  /** The newest version of each leg that was kept. */
  stored: LegRow[];
}

export async function gather(tx: Tx, flights: readonly FlightOfDay[], reading: Reading): Promise<Gathered> {
  const own = await tx.movements.ofFlights(flights);
  const storedOwn = await tx.legs.ofFlights(flights);
  const beside = await tx.legs.besides(placesOf([...toldBy(own, reading).legs, ...storedOwn]));
  const storedBeside = await tx.legs.ofFlights(beside);
  const context = await tx.legs.besides(placesOf(storedBeside));
  const anew = new Set([...flights, ...beside].map(keyOf));
  const others = [...new Map([...beside, ...context].map((flight) => [keyOf(flight), flight])).values()];
  const known = new Set(flights.map(keyOf));
  const messages = [...own, ...(await tx.movements.ofFlights(others.filter((flight) => !known.has(keyOf(flight)))))];
  const { legs, waiting } = toldBy(messages, reading);
  const isAnew = (flight: { flight: string | null; scheduledOn: string | null }) => anew.has(keyOf(flight));
  const about = new Set(messages.filter(isAnew).map(({ id }) => id));
  return {
    messages: messages.filter(isAnew),
    told: legs.filter(isAnew),
    waiting: waiting.filter(({ messageId }) => about.has(messageId)),
    stored: [...storedOwn, ...storedBeside.filter((leg) => !known.has(keyOf(leg)))],
  };
}

/** What messages tell, in whatever order they came. */
function toldBy(messages: readonly MovementMessageRow[], reading: Reading) {
  const transmissions = messages.map(({ text, receivedAt }) => ({ text, receivedAt }));
  const { legs, tray } = readMovements(transmissions, reading);
  const aircraftOf = new Map(messages.map(({ registration, aircraftId }) => [registration, aircraftId]));
  return {
    legs: legs.flatMap((leg: FlownLeg) => {
      const aircraftId = aircraftOf.get(leg.registration);
      return aircraftId ? [contentOf(leg, aircraftId)] : [];
    }),
    waiting: tray.flatMap(({ reason, sentence, place }): Waiting[] => {
      const message = messages[place.transmission - 1];
      return message ? [{ messageId: message.id, reason, sentence }] : [];
    }),
  };
}

function placesOf(legs: readonly LegPlace[]): LegPlace[] {
  return legs.map(({ aircraftId, offBlockAt, flight, scheduledOn }) => ({
    aircraftId,
    offBlockAt,
    flight,
    scheduledOn,
  }));
}

export function keyOf({ flight, scheduledOn }: { flight: string | null; scheduledOn: string | null }): string {
  return `${flight} ${scheduledOn}`;
}
