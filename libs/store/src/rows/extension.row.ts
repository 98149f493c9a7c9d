import { EntitySchema } from 'typeorm';
import { day, id, instant, key, nullable, text, version, whole } from './column.js';
import { toMember, within } from './foreign-key.js';

/**
 * One extension of a rectification interval. It begins when a person asks for it; another person grants it or declines it,
 * the one who asked withdraws it, or a later request takes its place. A granted one owes the authority a notice, which is
 * sent and then acknowledged; it ends there, and stays in the register for ever.
 */
export interface ExtensionRow {
  operatorId: string;
  id: string;
  defectId: string;
  state: 'asked' | 'granted' | 'declined' | 'withdrawn' | 'replaced';
  askedBy: string;
  /** In which role it was asked for. */
  askedRole: string;
  askedAt: string;
  /** Why, outside the operator's control. */
  reason: string;
  whyNotFixed: string;
  plan: string;
  /** Parts that are waited for, with their orders. */
  parts: string | null;
  /** Calendar days asked for; null asks for the longest allowed. */
  days: number | null;
  /** Reference of the authority's agreement, where the rules ask for one beforehand. */
  agreement: string | null;
  decidedBy: string | null;
  decidedAt: string | null;
  /** Why it was declined or withdrawn. */
  decidedBecause: string | null;
  /** The act in the life of the defect that granted it. */
  actId: string | null;
  lastDayBefore: string | null;
  lastDay: string | null;
  /** Exclusive. */
  endsBefore: string | null;
  endsAt: string | null;
  /** When the authority must have been told; null where the rules name no such time. */
  noticeDueAt: string | null;
  sentBy: string | null;
  sentAt: string | null;
  sentReference: string | null;
  /** Who entered the acknowledgement here. */
  acknowledgedBy: string | null;
  acknowledgedAt: string | null;
  acknowledgedReference: string | null;
  version: number;
}

export const ExtensionTable = new EntitySchema<ExtensionRow>({
  name: 'extension',
  columns: {
    operatorId: key(),
    id: key(),
    defectId: id(),
    state: text(),
    askedBy: id(),
    askedRole: text(),
    askedAt: instant(),
    reason: text(),
    whyNotFixed: text(),
    plan: text(),
    parts: text(nullable),
    days: whole(nullable),
    agreement: text(nullable),
    decidedBy: id(nullable),
    decidedAt: instant(nullable),
    decidedBecause: text(nullable),
    actId: id(nullable),
    lastDayBefore: day(nullable),
    lastDay: day(nullable),
    endsBefore: instant(nullable),
    endsAt: instant(nullable),
    noticeDueAt: instant(nullable),
    sentBy: id(nullable),
    sentAt: instant(nullable),
    sentReference: text(nullable),
    acknowledgedBy: id(nullable),
    acknowledgedAt: instant(nullable),
    acknowledgedReference: text(nullable),
    version: version(),
  },
  indices: [
    {
      name: 'extension_open_request',
      columns: ['operatorId', 'defectId'],
      unique: true,
      where: "state = 'asked'",
    },
    { name: 'extension_of_defect', columns: ['operatorId', 'defectId', 'askedAt'] },
    { name: 'extension_by_time', columns: ['operatorId', 'askedAt'] },
  ],
  checks: [
    {
      name: 'extension_state',
      expression: "state in ('asked', 'granted', 'declined', 'withdrawn', 'replaced')",
    },
    { name: 'extension_days_counted', expression: 'days > 0' },
    { name: 'extension_acknowledged_once_sent', expression: 'acknowledged_at is null or sent_at is not null' },
    { name: 'extension_granted_by_an_act', expression: "(state = 'granted') = (act_id is not null)" },
  ],
  foreignKeys: [
    within('extension_defect', 'defect', 'defectId'),
    within('extension_act', 'defect_act', 'actId'),
    toMember('extension_asked_by', 'askedBy'),
    toMember('extension_decided_by', 'decidedBy'),
    toMember('extension_sent_by', 'sentBy'),
    toMember('extension_acknowledged_by', 'acknowledgedBy'),
  ],
});
