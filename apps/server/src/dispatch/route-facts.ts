/** What was answered about a flight as such holds whoever flies it; what was answered about one item does not. */
import type { Situation } from '#dispatch';
import type { FlightRow, Tx } from '#store';
import { factBook } from './fact-book.js';

export async function routeFacts(tx: Tx, { id, aircraftId }: FlightRow): Promise<Situation['facts']> {
  const answered = (await tx.facts.current(aircraftId, [id])).filter(({ flightId }) => flightId !== null);
  return factBook(answered.filter(({ key }) => !key.includes('[')));
}

/** The same aircraft on a flight that is planned for another one. */
export async function onRoute(tx: Tx, situation: Situation, flight: FlightRow): Promise<Situation> {
  if (situation.flight === null) return situation;
  const facts = { ...situation.flight.facts, ...(await routeFacts(tx, flight)) };
  return { ...situation, flight: { ...situation.flight, facts } };
}
