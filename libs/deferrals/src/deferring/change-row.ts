/**
 * Another row, or another basis, takes the place of the one in force. It is work to be signed, and the clock is kept.
 * ORO.MLR.105; M.A.403(c).
 */
import type { RowChanged } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type BasisContext, type Command } from '../context.js';
import { askedAfter } from '../correcting/asked-after.js';
import type { DefectLife } from '../defect-life.js';
import type { FailedItem } from '../acts.js';
import type { Signature } from '../people.js';
import { Refusal } from '../refusal.js';
import { earliestEnd, isOver } from '../signed-limit.js';
import { givenAt } from '../signing/given-at.js';
import { needText } from '../writing-up/need-text.js';
import { admitBasis } from './admit-basis.js';
import { admitCause } from './admit-cause.js';
import { admitConcurrence } from './admit-concurrence.js';
import { admitLimits } from './admit-limits.js';
import { admitUse } from './admit-use.js';
import { chooseBasis, type BasisAsked } from './choose-basis.js';
import { withDone } from './done-within.js';
import { limitsAfter } from './limits-after.js';
import { signLimits } from './sign-limits.js';

export const rowChanged: ActRule<'row-changed'> = {
  kind: 'row-changed',
  privilege: 'defer',
  admit(life, act) {
    const { defect, aircraft } = life;
    if (life.deferral === null) throw new Refusal('not-deferred', { defect });
    needText('the reason for the change of row', act.reason);
    admitBasis(defect, act.basis, act.item);
    admitLimits(life, act.limits);
    admitConcurrence(act.concurrence, act.by, { aircraft, enteredAt: act.enteredAt, act: 'concurrence' });
    if (act.causeClosed !== null && act.by.role !== 'maintenance-control') {
      throw new Refusal('control-must-sign', { name: act.by.name, role: act.by.role });
    }
    const after = limitsAfter(life, act);
    if (isOver(after, givenAt(act.by, act.enteredAt))) {
      throw new Refusal('interval-over', { defect, endedAt: earliestEnd(after) ?? '' });
    }
  },
  changes: (life, act) => ({
    item: act.item,
    asked: askedAfter(life, act),
    deferral: {
      basis: act.basis,
      signedBy: act.by,
      act: act.id,
      deferredAt: life.deferral?.deferredAt ?? act.enteredAt,
    },
    bases: [...life.bases, act.basis],
    limits: limitsAfter(life, act),
  }),
};

export interface ChangeRow extends Command {
  basis: BasisAsked | null;
  /** Where another item than the one thought of turns out to be the failed one; absent: the same. */
  item?: FailedItem;
  reason: string;
  concurrence?: Signature;
  /** The closed defect of the other unit, whose end lets the limit of a pair's row go. */
  causeClosed?: string;
}

/** Throws Refusal; see DEFERRING_REFUSALS and SIGNING_REFUSALS. */
export function changeRow(life: DefectLife, command: ChangeRow, context: BasisContext): RowChanged[] {
  const { defect } = life;
  if (life.deferral === null || life.item === null) throw new Refusal('not-deferred', { defect });
  const concurrence = command.concurrence ?? null;
  if (context.settings.concurrenceNeeded && concurrence === null) throw new Refusal('concurrence-missing', {});
  const item = command.item ?? life.item;
  const basis = chooseBasis(defect, command.basis, item, context.offered);
  const act: RowChanged = {
    kind: 'row-changed',
    ...headOf(command, context),
    defect,
    basis,
    item,
    limits: signLimits({ ...life, item }, basis, context),
    reason: command.reason,
    concurrence,
    causeClosed: command.causeClosed ?? null,
    policy: context.settings.changeOfRow,
  };
  if (act.causeClosed !== null) admitCause(life, act.causeClosed, context.others);
  admitUse(defect, limitsAfter(life, act), { ...context, used: withDone(context.used, life) });
  return decided(rowChanged, life, act);
}
