import { ConcurrenceTable, type ConcurrenceRow } from '../rows/concurrence.row.js';
import type { Fresh } from '../rows/fresh.js';
import type { Transaction } from '../transaction.js';

export class Concurrences {
  constructor(private readonly tx: Transaction) {}

  add(concurrence: Fresh<ConcurrenceRow>): Promise<string> {
    return this.tx.insert(ConcurrenceTable, concurrence);
  }

  /** Those given for a defect as it stands at this version, the newest first. */
  ofDefect(defectId: string, defectVersion: number): Promise<ConcurrenceRow[]> {
    const { operatorId, manager } = this.tx;
    return manager.find(ConcurrenceTable, {
      where: { operatorId, defectId, defectVersion },
      order: { givenAt: 'DESC', id: 'DESC' },
    });
  }
}
