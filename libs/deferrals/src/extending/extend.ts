/**
 * An extension is granted: under the operator's approved procedure, before the interval ends, by another person than the
 * one who asked, once. ORO.MLR.105(f); FAA Order 8900.1 4-689; operations specification D095.
 */
import type { Extended, ExtensionRequest } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import { admitLimits } from '../deferring/admit-limits.js';
import type { DefectLife } from '../defect-life.js';
import { givenAt } from '../signing/given-at.js';
import { admitExtension } from './admit-extension.js';
import { admitRequest } from './admit-request.js';
import { offerExtension } from './extension-offer.js';

export const extended: ActRule<'extended'> = {
  kind: 'extended',
  privilege: 'extend',
  admit(life, act) {
    const grantedAt = givenAt(act.by, act.enteredAt);
    admitExtension(life, { grantedAt, timesAllowed: act.timesAllowed });
    admitRequest(act.request, act.by, grantedAt);
    admitLimits(life, act.limits);
  },
  changes: (life, act) => ({ extensions: [...life.extensions, act], limits: act.limits }),
};

export interface Extend extends Command {
  request: ExtensionRequest;
  /** Calendar days to add; absent: the longest allowed. */
  days?: number;
  agreement?: string;
}

/** Throws Refusal; see EXTENDING_REFUSALS. */
export function extendInterval(life: DefectLife, command: Extend, context: Context): Extended[] {
  const head = headOf(command, context);
  const { days, agreement, request } = command;
  const asked = {
    grantedAt: givenAt(command.by, head.enteredAt),
    ...(days === undefined ? {} : { days }),
    ...(agreement === undefined ? {} : { agreement }),
  };
  return decided(extended, life, {
    kind: 'extended',
    ...head,
    defect: life.defect,
    request,
    agreement: agreement ?? null,
    ...offerExtension(life, asked, context.settings),
  });
}
