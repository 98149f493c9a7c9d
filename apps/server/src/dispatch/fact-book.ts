/** What people answered, as the reasoner takes it. */
import type { KnownFact, PlannedFlight } from '#dispatch';
import { factOf } from '#mel';
import type { FactRow, FlightRow } from '#store';

/** The newest answer for each key; one about the flight stands before one about the aircraft. */
export function factBook(rows: readonly FactRow[]): Record<string, KnownFact> {
  const book: Record<string, KnownFact> = {};
  for (const row of rows.toSorted((one, other) => Number(one.flightId !== null) - Number(other.flightId !== null))) {
    const validUntil = row.validUntil ?? defaultValidity(row);
    book[row.key] = {
      value: row.value,
      ...(row.source ? { source: row.source } : {}),
      observedAt: row.observedAt,
      ...(validUntil ? { validUntil } : {}),
    };
  }
  return book;
}

function defaultValidity({ key, observedAt }: FactRow): string | null {
  const minutes = factOf(key.replace(/\[.*$/, ''))?.validity;
  return typeof minutes === 'number' ? new Date(Date.parse(observedAt) + minutes * 60_000).toISOString() : null;
}

/** What the plan of a flight says where nobody has answered since: an answer stands before the plan. */
export function stillPlanned(
  flight: FlightRow,
  answered: Readonly<Record<string, KnownFact>>,
): PlannedFlight['facts'] & object {
  const planned = Object.entries(flight.facts).filter(([key]) => !Object.hasOwn(answered, key));
  return Object.fromEntries(planned) as PlannedFlight['facts'] & object;
}
