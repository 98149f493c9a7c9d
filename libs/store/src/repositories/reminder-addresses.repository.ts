import { IsNull } from 'typeorm';
import type { Fresh } from '../rows/fresh.js';
import { ReminderAddressTable, type ReminderAddressRow } from '../rows/reminder-address.row.js';
import type { Transaction } from '../transaction.js';

export class ReminderAddresses {
  constructor(private readonly tx: Transaction) {}

  add(address: Fresh<ReminderAddressRow, 'forAll' | 'codeTries' | 'codesAsked'>): Promise<string> {
    return this.tx.insert(ReminderAddressTable, address);
  }

  get(id: string): Promise<ReminderAddressRow | null> {
    return this.tx.manager.findOneBy(ReminderAddressTable, { operatorId: this.tx.operatorId, id });
  }

  /** Nobody else changes it until this transaction ends: a job and its owner may both be at it. */
  toChange(id: string): Promise<ReminderAddressRow | null> {
    return this.tx.read(ReminderAddressTable, 'id = $2 for update', [id]).then(([row]) => row ?? null);
  }

  /** Those in use. */
  inUse(): Promise<ReminderAddressRow[]> {
    const { operatorId, manager } = this.tx;
    return manager.find(ReminderAddressTable, { where: { operatorId, endedAt: IsNull() }, order: { id: 'ASC' } });
  }

  /** How many secrets of endpoints lie as they are, under no key. */
  async readableSecrets(): Promise<number> {
    const rows = await this.tx.query<{ n: number }>(
      `select (count(*) filter (where secret not like 'sealed:%')
         + count(*) filter (where former_secret not like 'sealed:%'))::int as n
       from reminder_address where operator_id = $1`,
      [this.tx.operatorId],
    );
    return rows[0]?.n ?? 0;
  }

  /** The mailboxes entered since, in use or not. */
  mailboxesSince(at: string): Promise<ReminderAddressRow[]> {
    return this.tx.read(ReminderAddressTable, `kind = 'email' and created_at > $2`, [at]);
  }

  /** Those of the operator and of one person, or of everybody; the newest first. */
  list(personId: string | null): Promise<ReminderAddressRow[]> {
    const { operatorId, manager } = this.tx;
    return manager.find(ReminderAddressTable, {
      where:
        personId === null
          ? { operatorId }
          : [
              { operatorId, personId },
              { operatorId, forAll: true },
            ],
      order: { createdAt: 'DESC', id: 'DESC' },
    });
  }

  /** @throws StaleVersion */
  change(id: string, seen: number, changes: Partial<ReminderAddressRow>): Promise<void> {
    return this.tx.change(ReminderAddressTable, id, seen, changes);
  }
}
