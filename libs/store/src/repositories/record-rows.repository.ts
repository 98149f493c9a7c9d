import { In, MoreThan } from 'typeorm';
import type { ToldTable } from '../record/told-tables.js';
import { LegTable, type LegRow } from '../rows/leg.row.js';
import {
  MovementDeliveryTable,
  MovementMessageTable,
  type MovementDeliveryRow,
  type MovementMessageRow,
} from '../rows/movement.row.js';
import type { Transaction } from '../transaction.js';

/** Tables whose rows carry a text beside its hash. */
const HASHED = [
  ['mel_revision', 'content'],
  ['card_library', 'content'],
  ['movement_delivery', 'text'],
  ['movement_message', 'text'],
] as const;

/** What is read only to hold tables against the record: page after page, in the order of keys. */
export class RowsForRecord {
  constructor(private readonly tx: Transaction) {}

  /** @param after the last key of the page before; null for the first */
  async keysOf({ table, key }: ToldTable, after: string | null, limit: number): Promise<string[]> {
    const { operatorId, manager } = this.tx;
    const { name } = table.options;
    const where = {
      ...(name === 'operator' ? { id: operatorId } : { operatorId }),
      ...(after === null || name === 'operator' ? {} : { [key]: MoreThan(after) }),
    };
    const select = { [key]: true, ...(name === 'operator' ? {} : { operatorId: true }) };
    const found = await manager.find(table, { select, where, order: { [key]: 'ASC' }, take: limit });
    return (found as Record<string, unknown>[]).map((row) => String(row[key]));
  }

  /** Rows whose text has another hash than the one beside it. */
  async otherwiseHashed(): Promise<{ table: string; id: string; column: string }[]> {
    const found = [];
    for (const [table, column] of HASHED) {
      const rows = await this.tx.query<{ id: string }>(
        `select id from ${table} where operator_id = $1
         and sha256 <> encode(pg_catalog.sha256(convert_to(${column}, 'UTF8')), 'hex')`,
        [this.tx.operatorId],
      );
      found.push(...rows.map(({ id }) => ({ table, id, column })));
    }
    return found;
  }

  /** Versions of legs by the entry that told them. */
  legsAfter(entryId: string, limit: number): Promise<LegRow[]> {
    return this.tx.manager.find(LegTable, this.page(entryId, limit));
  }

  deliveriesAfter(entryId: string, limit: number): Promise<MovementDeliveryRow[]> {
    return this.tx.manager.find(MovementDeliveryTable, this.page(entryId, limit));
  }

  messagesOf(deliveryIds: readonly string[]): Promise<MovementMessageRow[]> {
    const where = { operatorId: this.tx.operatorId, deliveryId: In([...deliveryIds]) };
    return this.tx.manager.find(MovementMessageTable, { where, order: { line: 'ASC', id: 'ASC' } });
  }

  /** Entries that told of a row which is not there. */
  async withoutRow(table: 'leg' | 'movement_delivery'): Promise<string[]> {
    const what = table === 'leg' ? 'leg.%' : 'movements.received';
    const rows = await this.tx.query<{ id: string }>(
      `select id from record_entry e where operator_id = $1 and what like $2
       and not exists (select from ${table} kept where kept.operator_id = e.operator_id and kept.entry_id = e.id)`,
      [this.tx.operatorId, what],
    );
    return rows.map(({ id }) => id);
  }

  private page(entryId: string, limit: number) {
    const where = { operatorId: this.tx.operatorId, entryId: MoreThan(entryId) };
    return { where, order: { entryId: 'ASC' }, take: limit } as const;
  }
}
