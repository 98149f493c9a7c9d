/** The flights of one aircraft as the reasoner looks ahead along them. Each keeps what is known of it, and no other's. */
import type { PlannedFlight, Situation } from '#dispatch';
import type { FlightRow, Tx } from '#store';
import { loadSituation, type Asked } from './situation-loader.js';

export interface DayPlan {
  situation: Situation;
  flights: PlannedFlight[];
}

/** What was flown before is counted for the first flight; the reasoner counts on from there. */
export async function loadDay(
  tx: Tx,
  asked: Omit<Asked, 'flight'>,
  flights: readonly FlightRow[],
  besides: (flight: FlightRow) => Promise<Situation['facts']> = () => Promise.resolve({}),
): Promise<DayPlan> {
  const first = await loadSituation(tx, { ...asked, flight: flights[0] ?? null });
  const planned: PlannedFlight[] = [];
  const judgements: Situation['judgements'] = [];
  for (const flight of flights) {
    const { situation } = await loadSituation(tx, { ...asked, opened: first.opened, flight });
    const facts = { ...situation.flight?.facts, ...(await besides(flight)), ...situation.facts };
    if (situation.flight !== null) planned.push({ ...situation.flight, facts });
    judgements.push(...situation.judgements.map((one) => ({ ...one, forFlight: flight.id })));
  }
  return { situation: { ...first.situation, flight: null, facts: {}, judgements }, flights: planned };
}
