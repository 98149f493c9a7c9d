import { EngineCountTable, type EngineCountRow } from '../rows/engine-count.row.js';
import type { Transaction } from '../transaction.js';

/** What people state of engines. The newest version of each counts; versions are added at the end, never changed. */
export class EngineCounts {
  constructor(private readonly tx: Transaction) {}

  /** Hold the aircraft: a second version under the same number is refused by the database. */
  async add(row: Omit<EngineCountRow, 'operatorId'>): Promise<void> {
    const { operatorId, manager } = this.tx;
    this.tx.forget();
    await manager.insert(EngineCountTable, { ...row, operatorId });
    this.tx.wrote(EngineCountTable, row.entryId);
  }

  /** Every version, by what it is of and in the order it was written. */
  versions(aircraftId: string): Promise<EngineCountRow[]> {
    const { operatorId, manager } = this.tx;
    return this.tx.remembered(`engine counts of ${aircraftId}`, () =>
      manager.find(EngineCountTable, {
        where: { operatorId, aircraftId },
        order: { at: 'ASC', id: 'ASC', version: 'ASC' },
      }),
    );
  }

  /** Those of these aircraft of whose engines something was ever stated. */
  async statedOf(aircraftIds: readonly string[]): Promise<string[]> {
    const rows = await this.tx.query<{ id: string }>(
      'select distinct aircraft_id as id from engine_count where operator_id = $1 and aircraft_id = any($2::uuid[])',
      [this.tx.operatorId, aircraftIds],
    );
    return rows.map(({ id }) => id);
  }

  /** The newest of each that is not withdrawn, in the order of their instants. */
  async inForce(aircraftId: string): Promise<EngineCountRow[]> {
    const newest = new Map<string, EngineCountRow>();
    for (const row of await this.versions(aircraftId)) {
      const known = newest.get(row.id);
      if (known === undefined || known.version < row.version) newest.set(row.id, row);
    }
    return [...newest.values()]
      .filter(({ kind }) => kind !== 'withdrawn')
      .sort((one, other) => one.at.localeCompare(other.at) || one.id.localeCompare(other.id));
  }
}
