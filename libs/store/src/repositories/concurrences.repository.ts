import { ConcurrenceTable, type ConcurrenceRow } from '../rows/concurrence.row.js';
import type { Fresh } from '../rows/fresh.js';
import type { Transaction } from '../transaction.js';

export class Concurrences {
  constructor(private readonly tx: Transaction) {}

  add(concurrence: Fresh<ConcurrenceRow>): Promise<string> {
    this.tx.forget();
    return this.tx.insert(ConcurrenceTable, concurrence);
  }

  /** Those given for a defect as it stands at this version, the newest first. */
  ofDefect(defectId: string, defectVersion: number): Promise<ConcurrenceRow[]> {
    return this.tx.remembered(`concurrences to ${defectId} at ${defectVersion}`, () =>
      this.tx.read(ConcurrenceTable, 'defect_id = $2 and defect_version = $3 order by given_at desc, id desc', [
        defectId,
        defectVersion,
      ]),
    );
  }
}
