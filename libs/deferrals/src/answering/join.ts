/**
 * The write-up is of a unit that is open under deferral already: it goes on as an entry of that defect, whose clock stays.
 * Both are written: this one ends, the other one is entered again under this sheet. 14 CFR 121.563; M.A.403(c).
 */
import type { Joined, ReEntered } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { openDeferralOf } from '../deferring/not-down-already.js';
import { before } from '../instant.js';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';
import { reEnter } from '../writing-up/re-enter.js';
import { admitAnswer, closedBy } from './admit-answer.js';

export const joined: ActRule<'joined'> = {
  kind: 'joined',
  privilege: 'defer',
  admit(life, { other, reason }) {
    admitAnswer(life);
    needText('why it is the same defect', reason);
    if (other === life.defect) throw new Refusal('joined-to-itself', { defect: other });
  },
  changes: (_, { by, enteredAt }) => closedBy('joined to another', by, enteredAt),
};

export interface Join extends Command {
  /** Identity for the entry on the other defect. */
  entryId: string;
  /** What the other defect calls this entry: the sheet of this write-up, or its number. */
  sheet: string;
  reason: string;
}

/**
 * Throws Refusal `joined-to-itself`, `not-the-same-unit`, or `joined-was-earlier` when the write-up is older than the clock it would join: then
 * the log time of the other one is corrected first, so that no day is lost.
 */
export function join(
  life: DefectLife,
  other: DefectLife,
  command: Join,
  context: Context,
): { joins: Joined[]; entered: ReEntered[] } {
  const { defect, item, recordedAt } = life;
  if (other.defect === defect) throw new Refusal('joined-to-itself', { defect });
  const open = openDeferralOf(item, [other]);
  if (open === null) throw new Refusal('not-the-same-unit', { defect, other: other.defect });
  if (before(recordedAt, open.recordedAt)) {
    throw new Refusal('joined-was-earlier', { defect, recordedAt, other: other.defect, counts: open.recordedAt });
  }
  const { entryId, sheet, reason, by } = command;
  const head = headOf(command, context);
  const joins = decided(joined, life, { kind: 'joined', ...head, defect, other: other.defect, reason });
  return { joins, entered: reEnter(other, { id: entryId, by, sheet, reason }, context) };
}
