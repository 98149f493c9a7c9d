import { In, LessThan } from 'typeorm';
import { ReminderTable, type ReminderRow } from '../rows/reminder.row.js';
import type { Transaction } from '../transaction.js';

export type NoticedReminder = Pick<
  ReminderRow,
  'id' | 'defectId' | 'term' | 'share' | 'addressId' | 'content' | 'noticedAt' | 'state' | 'nextAt' | 'problem'
>;

/** Reminders of one operator, from the moment they are noticed until they are done with. */
export class Reminders {
  constructor(private readonly tx: Transaction) {}

  /** One that was noticed before, by this server or by another, is left as it is. @returns the ids of the new ones */
  async notice(noticed: readonly NoticedReminder[]): Promise<string[]> {
    if (noticed.length === 0) return [];
    const added = await this.tx.query<{ id: string }>(
      `insert into reminder (operator_id, id, defect_id, term, share, address_id, content, noticed_at, state, next_at,
         problem)
       select $1, r.id, r."defectId", r.term, r.share, r."addressId", r.content, r."noticedAt", r.state, r."nextAt",
         r.problem
       from json_to_recordset($2) as r (id uuid, "defectId" uuid, term integer, share integer, "addressId" uuid,
         content jsonb, "noticedAt" timestamptz, state text, "nextAt" timestamptz, problem text)
       on conflict on constraint reminder_once do nothing returning id`,
      [this.tx.operatorId, JSON.stringify(noticed)],
    );
    return added.map(({ id }) => id);
  }

  get(id: string): Promise<ReminderRow | null> {
    return this.tx.manager.findOneBy(ReminderTable, { operatorId: this.tx.operatorId, id });
  }

  ofDefects(defectIds: readonly string[]): Promise<ReminderRow[]> {
    const { operatorId, manager } = this.tx;
    return manager.find(ReminderTable, {
      select: { operatorId: true, id: true, defectId: true, term: true, share: true, addressId: true },
      where: { operatorId, defectId: In([...defectIds]) },
    });
  }

  /** Those that should have been tried before an instant. */
  waitingSince(before: string): Promise<ReminderRow[]> {
    const { operatorId, manager } = this.tx;
    return manager.find(ReminderTable, {
      select: { operatorId: true, id: true },
      where: { operatorId, state: 'waiting', nextAt: LessThan(before) },
    });
  }

  /** To these addresses, the newest first. */
  latest(addressIds: readonly string[], limit: number): Promise<ReminderRow[]> {
    const { operatorId, manager } = this.tx;
    return manager.find(ReminderTable, {
      where: { operatorId, addressId: In([...addressIds]) },
      order: { noticedAt: 'DESC', id: 'DESC' },
      take: limit,
    });
  }

  /** @throws StaleVersion */
  change(id: string, seen: number, changes: Partial<ReminderRow>): Promise<void> {
    return this.tx.change(ReminderTable, id, seen, changes);
  }
}
