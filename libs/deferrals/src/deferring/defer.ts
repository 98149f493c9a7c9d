/**
 * A write-up is answered by deferring it: on a basis, for the unit that failed, until a limit that counts from the day in
 * the log. M.A.403(b)(c); ORO.MLR.105; 14 CFR 121.628.
 */
import type { Deferred, FailedItem } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { basisInWords } from '../basis.js';
import { headOf, type BasisContext, type Command } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { before } from '../instant.js';
import type { Signature } from '../people.js';
import { Refusal } from '../refusal.js';
import { earliestEnd, isOver } from '../signed-limit.js';
import { givenAt } from '../signing/given-at.js';
import { admitRemoval } from '../leaving/admit-removal.js';
import { admitBasis } from './admit-basis.js';
import { admitConcurrence } from './admit-concurrence.js';
import { admitLimits } from './admit-limits.js';
import { chooseBasis, type BasisAsked } from './choose-basis.js';
import { notDownAlready } from './not-down-already.js';
import { signLimits } from './sign-limits.js';

export const deferred: ActRule<'deferred'> = {
  kind: 'deferred',
  privilege: 'defer',
  admit(life, act) {
    const { defect, deferral, aircraft } = life;
    if (deferral !== null) {
      throw new Refusal('write-up-already-answered', { defect, answer: basisInWords(deferral.basis) });
    }
    admitBasis(defect, act.basis, act.item);
    admitLimits(life, act.limits);
    admitRemoval(defect, act.basis, life.left);
    admitConcurrence(act.concurrence, act.by, { aircraft, enteredAt: act.enteredAt, act: 'concurrence' });
    if (isOver(act.limits, givenAt(act.by, act.enteredAt))) {
      throw new Refusal('interval-over', { defect, endedAt: earliestEnd(act.limits) ?? '' });
    }
  },
  changes: (life, { id, basis, by, item, limits, recordedAt, enteredAt }) => ({
    item,
    deferral: { basis, signedBy: by, act: id, deferredAt: deferralAt(by, recordedAt, enteredAt) },
    bases: [...life.bases, basis],
    limits,
  }),
};

export interface Defer extends Command {
  /** Null when nobody named one: refused. */
  basis: BasisAsked | null;
  concurrence?: Signature;
}

/** Throws Refusal; see DEFERRING_REFUSALS and SIGNING_REFUSALS. */
export function defer(life: DefectLife, command: Defer, context: BasisContext): Deferred[] {
  const { defect } = life;
  const concurrence = command.concurrence ?? null;
  if (context.settings.concurrenceNeeded && concurrence === null) throw new Refusal('concurrence-missing', {});
  const basis = chooseBasis(defect, command.basis, life.item, context.offered);
  const item = life.item ?? NOT_LISTED;
  const head = headOf(command, context);
  notDownAlready(defect, life.item, context.others);
  return decided(deferred, life, {
    kind: 'deferred',
    ...head,
    defect,
    basis,
    item,
    limits: signLimits(life, basis, context, deferralAt(command.by, head.recordedAt, head.enteredAt)),
    concurrence,
  });
}

/** The earlier of its log time and its signature: what was flown after either of them counts. */
function deferralAt(by: Signature, recordedAt: string, enteredAt: string): string {
  const given = givenAt(by, enteredAt);
  return before(recordedAt, given) ? recordedAt : given;
}

/** A dent or a leak need not be an item of the MEL. */
const NOT_LISTED: FailedItem = { entry: null, subEntry: null, units: [] };
