import { In, IsNull, LessThan, MoreThanOrEqual, Not } from 'typeorm';
import { DefectTable, type DefectRow } from '../rows/defect.row.js';
import type { Fresh } from '../rows/fresh.js';
import type { Transaction } from '../transaction.js';

/** Open defects on the aircraft that defect `$2` is on. */
export const BESIDE = `closed_at is null
  and aircraft_id = (select aircraft_id from defect where operator_id = $1 and id = $2)`;

export class Defects {
  constructor(private readonly tx: Transaction) {}

  /** Gives the defect the next number of its aircraft. Lock the aircraft first, or two may be given the same. */
  async add(defect: Fresh<DefectRow, 'number' | 'units' | 'signed'>): Promise<{ id: string; number: number }> {
    const [last] = await this.tx.query<{ number: number }>(
      'select coalesce(max(number), 0) as number from defect where operator_id = $1 and aircraft_id = $2',
      [this.tx.operatorId, defect.aircraftId],
    );
    const number = (last?.number ?? 0) + 1;
    return { id: await this.tx.insert(DefectTable, { ...defect, number }), number };
  }

  get(id: string): Promise<DefectRow | null> {
    return this.tx.read(DefectTable, 'id = $2', [id]).then(([row]) => row ?? null);
  }

  getAll(ids: readonly string[]): Promise<DefectRow[]> {
    return this.tx.manager.findBy(DefectTable, { operatorId: this.tx.operatorId, id: In([...ids]) });
  }

  ofAircraft(aircraftId: string): Promise<DefectRow[]> {
    const { operatorId, manager } = this.tx;
    return manager.find(DefectTable, { where: { operatorId, aircraftId }, order: { number: 'ASC' } });
  }

  /** Not yet closed, on the aircraft that this defect is on. Ask right behind the lock of that aircraft. */
  openBeside(defectId: string): Promise<DefectRow[]> {
    return this.tx.read(DefectTable, `${BESIDE} order by number`, [defectId]);
  }

  /** Not yet closed, of one aircraft or of the whole fleet. */
  open(aircraftId?: string): Promise<DefectRow[]> {
    const { operatorId, manager } = this.tx;
    return manager.find(DefectTable, {
      where: { operatorId, closedAt: IsNull(), ...(aircraftId === undefined ? {} : { aircraftId }) },
      order: { aircraftId: 'ASC', number: 'ASC' },
    });
  }

  /** Keys of those that are open and deferred, those of one aircraft together. */
  deferredKeys(): Promise<Pick<DefectRow, 'id' | 'aircraftId'>[]> {
    return this.tx.query(
      `select id, aircraft_id as "aircraftId" from defect
       where operator_id = $1 and closed_at is null and basis is not null order by aircraft_id, number`,
      [this.tx.operatorId],
    );
  }

  /** The same of several aircraft. */
  openOn(aircraftIds: readonly string[]): Promise<DefectRow[]> {
    const { operatorId, manager } = this.tx;
    return manager.find(DefectTable, {
      where: { operatorId, closedAt: IsNull(), aircraftId: In([...aircraftIds]) },
      order: { aircraftId: 'ASC', number: 'ASC' },
    });
  }

  /** Closed ones of one aircraft on one entry, the last closed first. */
  closedOn(aircraftId: string, entry: string): Promise<DefectRow[]> {
    const { operatorId, manager } = this.tx;
    const where = { operatorId, aircraftId, entry, closedAt: Not(IsNull()) };
    return manager.find(DefectTable, { where, order: { closedAt: 'DESC', number: 'DESC' } });
  }

  /** Closed before an instant, the first closed first. */
  closedBefore(at: string, limit: number): Promise<DefectRow[]> {
    const { operatorId, manager } = this.tx;
    const where = { operatorId, closedAt: LessThan(at) };
    return manager.find(DefectTable, { where, order: { closedAt: 'ASC', id: 'ASC' }, take: limit });
  }

  /** The same without those that were noted to be past their period of keeping. */
  closedUnnoted(at: string, limit: number): Promise<DefectRow[]> {
    return this.tx.read(
      DefectTable,
      `closed_at < $2 and not exists (select from past_keeping k
         where k.operator_id = $1 and k.kind = 'defect' and k.subject_id = defect.id) order by closed_at, id limit $3`,
      [at, limit],
    );
  }

  /** With a fixed end, open or closed since an instant; of one aircraft or of all. */
  withEnd(aircraftId: string | null, closedSince: string): Promise<DefectRow[]> {
    const { operatorId, manager } = this.tx;
    const of = { operatorId, endsAt: Not(IsNull()), ...(aircraftId === null ? {} : { aircraftId }) };
    return manager.find(DefectTable, {
      where: [
        { ...of, closedAt: IsNull() },
        { ...of, closedAt: MoreThanOrEqual(closedSince) },
      ],
      order: { endsAt: 'ASC', id: 'ASC' },
    });
  }

  /** @throws StaleVersion */
  change(id: string, seen: number, changes: Partial<DefectRow>): Promise<void> {
    return this.tx.change(DefectTable, id, seen, changes);
  }
}
