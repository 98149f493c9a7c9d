/** What stands of the acceptances of a flight, held against the aircraft as it is now. */
import { basisShown, type Shown, voidBecause } from '#deferrals';
import type { AircraftRow, FlightRow, JudgementRow, Tx } from '#store';
import { livesOf, type OpenedDefect } from '../defects/defect-book.js';
import { firstWords } from '../defects/short-text.js';
import { defectNumber } from '../defects/views.js';
import { ACCEPTANCE } from './acceptance-kind.js';

/** @param goodUntil until when the answer is good; it counts only when it is accepted */
export async function shownOf(
  tx: Tx,
  aircraft: AircraftRow,
  flight: FlightRow,
  opened: readonly OpenedDefect[],
  goodUntil: string | null,
): Promise<Shown> {
  return {
    aircraft: aircraft.id,
    flight: flight.id,
    items: opened.map(({ row, life }) => ({
      defect: row.id,
      basis: basisShown(life),
      words: `${defectNumber(aircraft, row)} ${firstWords(life.description, 60)}`,
    })),
    lastReleaseAt: await tx.acts.lastReleaseAt(aircraft.id),
    goodUntil,
  };
}

/** The newest of each role for this flight, wherever it was given, and why it no longer stands. */
export async function acceptancesGiven(tx: Tx, shown: Shown, now: string) {
  const rows = await tx.judgements.ofFlight(shown.flight, ACCEPTANCE);
  const newest = [...new Map(rows.map((row) => [row.role, row])).values()];
  const people = await tx.people.known(newest.map(({ personId }) => personId));
  return newest.map((row) => ({
    role: row.role,
    accepted: row.accepted,
    reason: reasonIn(row),
    by: people.get(row.personId)?.name ?? '(name erased)',
    at: row.at,
    void: voidBecause({ shown: row.covers['shown'] as Shown }, shown, now),
  }));
}

/** For a list: nothing is read beside the acceptances where there are none. */
export async function acceptancesFor(tx: Tx, aircraft: AircraftRow, flight: FlightRow, now: string) {
  const rows = await tx.judgements.ofFlight(flight.id, ACCEPTANCE);
  if (rows.length === 0) return [];
  const opened = await livesOf(tx, await tx.defects.open(aircraft.id));
  return acceptancesGiven(tx, await shownOf(tx, aircraft, flight, opened, null), now);
}

function reasonIn({ covers }: JudgementRow): string | null {
  const reason = covers['reason'];
  return typeof reason === 'string' ? reason : null;
}
