import { AircraftTable, type AircraftRow } from '../rows/aircraft.row.js';
import type { Fresh } from '../rows/fresh.js';
import { StaleVersion } from '../stale-version.js';
import type { Transaction } from '../transaction.js';

export class Fleet {
  constructor(private readonly tx: Transaction) {}

  add(aircraft: Fresh<AircraftRow>): Promise<string> {
    return this.tx.insert(AircraftTable, aircraft);
  }

  get(id: string): Promise<AircraftRow | null> {
    return this.tx.read(AircraftTable, 'id = $2', [id]).then(([row]) => row ?? null);
  }

  byRegistration(registration: string): Promise<AircraftRow | null> {
    return this.tx.manager.findOneBy(AircraftTable, { operatorId: this.tx.operatorId, registration });
  }

  /** Every aircraft there ever was. */
  list(): Promise<AircraftRow[]> {
    const { operatorId, manager } = this.tx;
    return manager.find(AircraftTable, { where: { operatorId }, order: { registration: 'ASC' } });
  }

  /** The fleet as it is today. */
  async inService(): Promise<AircraftRow[]> {
    return (await this.list()).filter(({ retiredAt }) => retiredAt === null);
  }

  /** The aircraft with one of these marks, by letters and digits alone: messages carry no hyphen. */
  withMarks(marks: readonly string[]): Promise<AircraftRow[]> {
    const { operatorId, manager } = this.tx;
    return manager
      .createQueryBuilder(AircraftTable, 'aircraft')
      .where('aircraft.operator_id = :operatorId', { operatorId })
      .andWhere("regexp_replace(upper(aircraft.registration), '[^A-Z0-9]', '', 'g') in (:...marks)", {
        marks: [...marks],
      })
      .getMany();
  }

  /** Holds several, always in the same order. What was read before the wait is asked anew. */
  lockAll(ids: readonly string[]): Promise<AircraftRow[]> {
    this.tx.forget();
    return this.tx.read(AircraftTable, 'id = any($2) order by id for update', [[...ids]]);
  }

  /** Holds the aircraft for the rest of the transaction; see `lockAircraft`. */
  lock(id: string): Promise<AircraftRow | null> {
    this.tx.forget();
    return this.tx.read(AircraftTable, 'id = $2 for update', [id]).then(([row]) => row ?? null);
  }

  /** The same for the aircraft that a defect is on, in one question; null when there is no such defect. */
  async lockOfDefect(defectId: string): Promise<AircraftRow | null> {
    this.tx.forget();
    const [row] = await this.tx.read(
      AircraftTable,
      'id = (select aircraft_id from defect where operator_id = $1 and id = $2) for update',
      [defectId],
    );
    return row ?? null;
  }

  /** @throws StaleVersion */
  change(id: string, seen: number, changes: Partial<AircraftRow>): Promise<void> {
    return this.tx.change(AircraftTable, id, seen, changes);
  }

  /** Puts the version one up without another change: something on this aircraft is no longer as it was. */
  async touch({ id, version }: Pick<AircraftRow, 'id' | 'version'>): Promise<number> {
    await this.tx.change(AircraftTable, id, version, {});
    return version + 1;
  }

  /** The same for several at once. @throws StaleVersion */
  async touchAll(rows: readonly Pick<AircraftRow, 'id' | 'version'>[]): Promise<void> {
    if (rows.length === 0) return;
    this.tx.forget();
    const touched = await this.tx.query<{ id: string }>(
      `with touched as (
         update aircraft set version = aircraft.version + 1
         from unnest($2::uuid[], $3::integer[]) as seen (id, version)
         where aircraft.operator_id = $1 and aircraft.id = seen.id and aircraft.version = seen.version
         returning aircraft.id)
       select id from touched`,
      [this.tx.operatorId, rows.map(({ id }) => id), rows.map(({ version }) => version)],
    );
    const stale = rows.find(({ id }) => !touched.some((one) => one.id === id));
    if (stale) throw new StaleVersion('aircraft', stale.id, stale.version);
  }
}
