import type { Fresh } from '../rows/fresh.js';
import { OperatorTable } from '../rows/operator.row.js';
import { ZoneDifferenceTable, type ZoneDifferenceRow } from '../rows/zone-difference.row.js';
import type { Transaction } from '../transaction.js';

/** Which time-zone data an operator's deadlines were counted with, and what newer data read otherwise. */
export class ZoneData {
  constructor(private readonly tx: Transaction) {}

  /** The newest so far, null when nobody looked yet; the operator is locked, so that one server of several looks. */
  async lockNewest(): Promise<string | null> {
    const [row] = await this.tx.query<{ tzdb: string | null }>('select tzdb from operator where id = $1 for update', [
      this.tx.operatorId,
    ]);
    return row?.tzdb ?? null;
  }

  async setNewest(tzdb: string): Promise<void> {
    const { manager, operatorId } = this.tx;
    this.tx.forget();
    const bump = () => 'version + 1';
    await manager.update(OperatorTable, { id: operatorId }, { tzdb, version: bump });
    this.tx.wrote(OperatorTable, operatorId);
  }

  async add(difference: Fresh<ZoneDifferenceRow, 'confirmedAt' | 'confirmedBy'>): Promise<void> {
    this.tx.forget();
    await this.tx.insert(ZoneDifferenceTable, difference);
  }

  /** All of the operator, the oldest first; asked once in a transaction, because every deadline is read through them. */
  all(): Promise<ZoneDifferenceRow[]> {
    return this.tx.remembered('zone differences', () =>
      this.tx.read(ZoneDifferenceTable, 'true order by found_at, id'),
    );
  }

  /** @throws StaleVersion */
  async confirm({ id, version }: ZoneDifferenceRow, confirmedBy: string, confirmedAt: string): Promise<void> {
    this.tx.forget();
    await this.tx.change(ZoneDifferenceTable, id, version, { confirmedBy, confirmedAt });
  }
}
