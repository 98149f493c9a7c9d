import { ExtensionTable, type ExtensionRow } from '../rows/extension.row.js';
import type { Fresh } from '../rows/fresh.js';
import type { Transaction } from '../transaction.js';

/** Extensions of intervals, asked for and granted. Lock the aircraft before asking, granting or declining. */
export class Extensions {
  constructor(private readonly tx: Transaction) {}

  /** One that is still to be decided stands in the way: replace it first. */
  add(extension: Fresh<ExtensionRow>): Promise<string> {
    return this.tx.insert(ExtensionTable, extension);
  }

  get(id: string): Promise<ExtensionRow | null> {
    return this.tx.manager.findOneBy(ExtensionTable, { operatorId: this.tx.operatorId, id });
  }

  /** The request of a defect that waits to be decided; null when there is none. */
  asked(defectId: string): Promise<ExtensionRow | null> {
    return this.tx.manager.findOneBy(ExtensionTable, { operatorId: this.tx.operatorId, defectId, state: 'asked' });
  }

  /** The newest first. */
  ofDefect(defectId: string): Promise<ExtensionRow[]> {
    return this.select({ defectId });
  }

  /** All of this operator, the newest first. */
  latest(limit: number): Promise<ExtensionRow[]> {
    return this.select({}, limit);
  }

  /** @throws StaleVersion */
  change(id: string, seen: number, changes: Partial<ExtensionRow>): Promise<void> {
    return this.tx.change(ExtensionTable, id, seen, changes);
  }

  private select(where: Partial<Pick<ExtensionRow, 'defectId'>>, take?: number): Promise<ExtensionRow[]> {
    return this.tx.manager.find(ExtensionTable, {
      where: { ...where, operatorId: this.tx.operatorId },
      order: { askedAt: 'DESC', id: 'DESC' },
      ...(take === undefined ? {} : { take }),
    });
  }
}
