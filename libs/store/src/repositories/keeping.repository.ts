import type { Fresh } from '../rows/fresh.js';
import { type HoldKind, HoldTable, type HoldRow, PastKeepingTable, type PastKeepingRow } from '../rows/hold.row.js';
import type { Transaction } from '../transaction.js';

/** What is past its period of keeping, and what is kept all the same. */
export class Keeping {
  constructor(private readonly tx: Transaction) {}

  hold(hold: Fresh<HoldRow>): Promise<string> {
    return this.tx.insert(HoldTable, hold);
  }

  /** Nobody else releases it until this transaction ends. */
  toRelease(id: string): Promise<HoldRow | null> {
    return this.tx.read(HoldTable, 'id = $2 for update', [id]).then(([row]) => row ?? null);
  }

  /** @throws StaleVersion */
  release(id: string, seen: number, changes: Partial<HoldRow>): Promise<void> {
    return this.tx.change(HoldTable, id, seen, changes);
  }

  /** Those that were not released. */
  holds(): Promise<HoldRow[]> {
    return this.tx.read(HoldTable, 'released_at is null order by placed_at, id');
  }

  noted(): Promise<PastKeepingRow[]> {
    return this.tx.read(PastKeepingTable, 'true');
  }

  /** One that was noted before is left as it is. @returns the keys of the new ones */
  async note(kind: HoldKind, subjectIds: readonly string[], at: string): Promise<Set<string>> {
    const rows = await this.tx.query<{ id: string }>(
      `insert into past_keeping (operator_id, kind, subject_id, noted_at)
       select $1, $2, id, $4 from unnest($3::uuid[]) id on conflict do nothing returning subject_id as id`,
      [this.tx.operatorId, kind, subjectIds, at],
    );
    return new Set(rows.map(({ id }) => id));
  }
}
