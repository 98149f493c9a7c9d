import { In } from 'typeorm';
import { DefectActTable, type DefectActRow } from '../rows/defect-act.row.js';
import type { Fresh } from '../rows/fresh.js';
import type { Transaction } from '../transaction.js';

/** The acts in the lives of defects: added at the end, never changed. */
export class Acts {
  constructor(private readonly tx: Transaction) {}

  /** Lock the aircraft first: the next place in the life of a defect is taken by one act only. */
  async add(act: Fresh<DefectActRow, 'seq'>): Promise<number> {
    const [last] = await this.tx.query<{ seq: number }>(
      'select coalesce(max(seq), 0) as seq from defect_act where operator_id = $1 and defect_id = $2',
      [this.tx.operatorId, act.defectId],
    );
    const seq = (last?.seq ?? 0) + 1;
    await this.tx.insert(DefectActTable, { ...act, seq });
    return seq;
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
