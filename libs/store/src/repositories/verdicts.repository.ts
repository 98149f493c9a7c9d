import type { Fresh } from '../rows/fresh.js';
import { VerdictTable, type VerdictRow } from '../rows/verdict.row.js';
import type { Transaction } from '../transaction.js';

/** Answers that were given and recorded. */
export class Verdicts {
  constructor(private readonly tx: Transaction) {}

  add(verdict: Fresh<VerdictRow>): Promise<string> {
    return this.tx.insert(VerdictTable, verdict);
  }

  get(id: string): Promise<VerdictRow | null> {
    return this.tx.manager.findOneBy(VerdictTable, { operatorId: this.tx.operatorId, id });
  }

  /** The newest first. */
  ofAircraft(aircraftId: string, limit = 50): Promise<VerdictRow[]> {
    const { operatorId, manager } = this.tx;
    return manager.find(VerdictTable, {
      where: { operatorId, aircraftId },
      order: { at: 'DESC', id: 'DESC' },
      take: limit,
    });
  }
}
