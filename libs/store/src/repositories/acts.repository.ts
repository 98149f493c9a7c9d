import { In } from 'typeorm';
import { DefectActTable, type DefectActRow } from '../rows/defect-act.row.js';
import type { Fresh } from '../rows/fresh.js';
import type { Transaction } from '../transaction.js';

/** The acts in the lives of defects: added at the end, never changed. */
export class Acts {
  constructor(private readonly tx: Transaction) {}

  /**
   * Lock the aircraft first: the next place in the life of a defect is taken by one act only, and a second one for the
   * same place is refused by the database.
   * @param act with `seq`, its place in the life, from 1
   */
  async add(act: Fresh<DefectActRow>): Promise<void> {
    await this.tx.insert(DefectActTable, act);
  }

  of(defectId: string): Promise<DefectActRow[]> {
    return this.ofAll([defectId]);
  }

  ofAll(defectIds: readonly string[]): Promise<DefectActRow[]> {
    const { operatorId, manager } = this.tx;
    return manager.find(DefectActTable, {
      where: { operatorId, defectId: In([...defectIds]) },
      order: { defectId: 'ASC', seq: 'ASC' },
    });
  }
}
