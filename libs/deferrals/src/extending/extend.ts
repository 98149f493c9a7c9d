/**
 * An extension is granted: under the operator's approved procedure, before the interval ends, by another person than the
 * one who asked, once. ORO.MLR.105(f); FAA Order 8900.1 4-689; operations specification D095.
 */
import { presetOf } from '#intervals';
import type { Extended, ExtensionRequest } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import { admitLimits } from '../deferring/admit-limits.js';
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';
import { givenAt } from '../signing/given-at.js';
import { admitExtension } from './admit-extension.js';
import { admitRequest } from './admit-request.js';
import { extendLimits } from './extend-limits.js';

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
  const { settings } = context;
  const head = headOf(command, context);
  const grantedAt = givenAt(command.by, head.enteredAt);
  const timesAllowed = presetOf(settings.preset).extension.times.value;
  admitExtension(life, { grantedAt, timesAllowed });
  if (settings.extensionProcedure === null) throw new Refusal('no-extension-procedure', {});
  const { days, agreement, request } = command;
  const asked = {
    grantedAt,
    ...(days === undefined ? {} : { days }),
    ...(agreement === undefined ? {} : { agreement }),
  };
  return decided(extended, life, {
    kind: 'extended',
    ...head,
    defect: life.defect,
    request,
    procedure: settings.extensionProcedure,
    agreement: agreement ?? null,
    timesAllowed,
    ...extendLimits(life, asked, settings),
  });
}
