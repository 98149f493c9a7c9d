import type { Fresh } from '../rows/fresh.js';
import { LeftItemTable, type LeftItemRow } from '../rows/left-item.row.js';
import { RegisterActTable, type RegisterActRow } from '../rows/register-act.row.js';
import type { Transaction } from '../transaction.js';

/** What is left altered on each aircraft. */
export class Register {
  constructor(private readonly tx: Transaction) {}

  add(item: Fresh<LeftItemRow>): Promise<string> {
    this.tx.forget();
    return this.tx.insert(LeftItemTable, item);
  }

  get(id: string): Promise<LeftItemRow | null> {
    return this.tx.read(LeftItemTable, 'id = $2', [id]).then(([row]) => row ?? null);
  }

  /** Lock the aircraft first: the next place in its register is taken by one act only. */
  async addAct(act: Fresh<RegisterActRow>): Promise<void> {
    await this.tx.insert(RegisterActTable, act);
  }

  /** The acts on the register of an aircraft, in order. */
  acts(aircraftId: string): Promise<RegisterActRow[]> {
    const { operatorId, manager } = this.tx;
    return manager.find(RegisterActTable, { where: { operatorId, aircraftId }, order: { seq: 'ASC' } });
  }

  /** What is fitted now, or with `removed` everything that ever was. */
  ofAircraft(aircraftId: string, { removed = false } = {}): Promise<LeftItemRow[]> {
    const fitted = removed ? '' : ' and removed_at is null';
    return this.tx.remembered(`left on ${aircraftId}${fitted}`, () =>
      this.tx.read(LeftItemTable, `aircraft_id = $2${fitted} order by fitted_at, id`, [aircraftId]),
    );
  }

  /** @throws StaleVersion */
  change(id: string, seen: number, changes: Partial<LeftItemRow>): Promise<void> {
    this.tx.forget();
    return this.tx.change(LeftItemTable, id, seen, changes);
  }
}
