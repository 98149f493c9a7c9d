/** What an extension granted at a certain moment would give, under the rules in force. Nothing is granted by asking. */
import { presetOf } from '#intervals';
import type { Extended } from '../acts.js';
import type { DeferralSettings } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';
import { admitExtension } from './admit-extension.js';
import { extendLimits, type GrantAsked } from './extend-limits.js';

export type ExtensionOffer = Pick<Extended, 'procedure' | 'timesAllowed' | 'limits' | 'noticeDueAt'>;

/** Throws Refusal where the operator may not extend; see EXTENDING_REFUSALS. Who asks and who grants is looked at apart. */
export function offerExtension(life: DefectLife, asked: GrantAsked, settings: DeferralSettings): ExtensionOffer {
  const timesAllowed = presetOf(settings.preset).extension.times.value;
  admitExtension(life, { grantedAt: asked.grantedAt, timesAllowed });
  if (settings.extensionProcedure === null) throw new Refusal('no-extension-procedure', {});
  return { procedure: settings.extensionProcedure, timesAllowed, ...extendLimits(life, asked, settings) };
}
