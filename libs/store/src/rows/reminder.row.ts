import { EntitySchema } from 'typeorm';
import { id, instant, json, key, nullable, text, version, whole } from './column.js';
import { within } from './foreign-key.js';

/**
 * One reminder: of one deferral, or of what is past its period of keeping, at one share of what is left, to one address. It begins when the share is noticed, and
 * ends when it was handed over, was refused for good, or is no longer needed. Until then it is tried again and again,
 * each time under the same id.
 */
export interface ReminderRow {
  operatorId: string;
  id: string;
  /** Null of what is past its period of keeping. */
  defectId: string | null;
  /** 1, and one more with each extension: for a new end the shares are noticed anew. */
  term: number;
  /** Percent that were left; 0 at the end. */
  share: number;
  addressId: string;
  /** What it says, fixed when it was noticed, so that a repeat says the same. */
  content: object;
  noticedAt: string;
  /** `passed over`: a smaller share of the same deferral was noticed at the same moment, and that one is sent. */
  state: 'waiting' | 'sent' | 'refused' | 'passed over' | 'dropped';
  attempts: number;
  /** When it is tried next; null unless it waits. */
  nextAt: string | null;
  triedAt: string | null;
  /** Why it was not delivered, or is no longer sent. */
  problem: string | null;
  sentAt: string | null;
  version: number;
}

export const ReminderTable = new EntitySchema<ReminderRow>({
  name: 'reminder',
  columns: {
    operatorId: key(),
    id: key(),
    defectId: id(nullable),
    term: whole(),
    share: whole(),
    addressId: id(),
    content: json(),
    noticedAt: instant(),
    state: text(),
    attempts: whole({ default: 0 }),
    nextAt: instant(nullable),
    triedAt: instant(nullable),
    problem: text(nullable),
    sentAt: instant(nullable),
    version: version(),
  },
  uniques: [{ name: 'reminder_once', columns: ['operatorId', 'defectId', 'term', 'share', 'addressId'] }],
  indices: [
    { name: 'reminder_waiting', columns: ['operatorId', 'nextAt'], where: "state = 'waiting'" },
    { name: 'reminder_by_time', columns: ['operatorId', 'noticedAt'] },
  ],
  checks: [
    { name: 'reminder_term_counted', expression: 'term > 0' },
    { name: 'reminder_share_percent', expression: 'share between 0 and 100' },
    {
      name: 'reminder_state',
      expression: "state in ('waiting', 'sent', 'refused', 'passed over', 'dropped')",
    },
    { name: 'reminder_due', expression: "(state = 'waiting') = (next_at is not null)" },
    { name: 'reminder_sent', expression: "(state = 'sent') = (sent_at is not null)" },
  ],
  foreignKeys: [
    within('reminder_defect', 'defect', 'defectId'),
    within('reminder_address', 'reminder_address', 'addressId'),
  ],
});
