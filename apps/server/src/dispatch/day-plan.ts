/** The flights of one aircraft as the reasoner looks ahead along them. Each keeps what is known of it, and no other's. */
import type { PlannedFlight, Situation } from '#dispatch';
import type { FlightRow, Tx } from '#store';
import type { OpenedDefect } from '../defects/defect-book.js';
import { loadSituations, type Asked } from './situation-loader.js';

export interface DayPlan {
  situation: Situation;
  flights: PlannedFlight[];
  /** The open defects, to be asked with again in this transaction. */
  opened: readonly OpenedDefect[];
}

/** What was flown before is counted for the first flight; the reasoner counts on from there. */
export async function loadDay(
  tx: Tx,
  asked: Omit<Asked, 'flight'>,
  flights: readonly FlightRow[],
  besides: (flight: FlightRow) => Promise<Situation['facts']> = () => Promise.resolve({}),
): Promise<DayPlan> {
  const { each, none, opened } = await loadSituations(tx, asked, flights);
  const planned: PlannedFlight[] = [];
  const judgements: Situation['judgements'] = [];
  for (const [index, flight] of flights.entries()) {
    const situation = each[index]!;
    const facts = { ...situation.flight?.facts, ...(await besides(flight)), ...situation.facts };
    if (situation.flight !== null) planned.push({ ...situation.flight, facts });
    judgements.push(...situation.judgements.map((one) => ({ ...one, forFlight: flight.id })));
  }
  const first = each[0] ?? none;
  return { situation: { ...first, flight: null, facts: {}, judgements }, flights: planned, opened };
}
