import { isoText } from '../rows/column.js';
import { FactTable, type FactRow } from '../rows/fact.row.js';
import type { Fresh } from '../rows/fresh.js';
import type { Transaction } from '../transaction.js';

export class Facts {
  constructor(private readonly tx: Transaction) {}

  add(fact: Fresh<FactRow>): Promise<string> {
    this.tx.forget();
    return this.tx.insert(FactTable, fact);
  }

  /**
   * The newest answer for each key of an aircraft: those about the aircraft and, for each of the flights, those about that
   * flight too. One that is no longer valid is among them; its `validUntil` says so.
   */
  current(aircraftId: string, flightIds: readonly string[]): Promise<FactRow[]> {
    const asked = `facts of ${aircraftId} for ${flightIds.join(' ')}`;
    return this.tx.remembered(asked, () => this.newest(aircraftId, flightIds));
  }

  private async newest(aircraftId: string, flightIds: readonly string[]): Promise<FactRow[]> {
    const rows = await this.tx.query<FactRow>(
      `select distinct on (key, flight_id) operator_id as "operatorId", id, aircraft_id as "aircraftId",
         flight_id as "flightId", key, value, source, answered_by as "answeredBy", observed_at as "observedAt",
         valid_until as "validUntil", entered_at as "enteredAt"
       from fact
       where operator_id = $1 and aircraft_id = $2 and (flight_id is null or flight_id = any($3))
       order by key, flight_id, entered_at desc, id desc`,
      [this.tx.operatorId, aircraftId, flightIds],
    );
    return rows.map((row) => ({
      ...row,
      observedAt: read(row.observedAt) as string,
      validUntil: read(row.validUntil),
      enteredAt: read(row.enteredAt) as string,
    }));
  }
}

/** A plain query hands instants over as Date. */
function read(value: unknown): string | null {
  return isoText(value as Date | null);
}
