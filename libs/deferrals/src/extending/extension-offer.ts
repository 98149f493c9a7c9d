/** What an extension granted at a certain moment would give, under the rules in force. Nothing is granted by asking. */
import { presetOf } from '#intervals';
import type { Extended } from '../acts.js';
import type { DeferralSettings } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';
import { admitExtension } from './admit-extension.js';
import { stateOf, type State } from '../standing.js';
import { extendLimits, type GrantAsked } from './extend-limits.js';

/** What is rectified waits for its release, not for more time. */
const RECTIFIED: State = 'rectified, not released';

export type ExtensionOffer = Pick<Extended, 'procedure' | 'timesAllowed' | 'limits' | 'noticeDueAt'>;

/** Throws Refusal where the operator may not extend; see EXTENDING_REFUSALS. Who asks and who grants is looked at apart. */
export function offerExtension(life: DefectLife, asked: GrantAsked, settings: DeferralSettings): ExtensionOffer {
  if (stateOf(life) === RECTIFIED) throw new Refusal('rectified-not-released', { defect: life.defect });
  const timesAllowed = presetOf(settings.preset).extension.times.value;
  admitExtension(life, { grantedAt: asked.grantedAt, timesAllowed });
  if (settings.extensionProcedure === null) throw new Refusal('no-extension-procedure', {});
  return { procedure: settings.extensionProcedure, timesAllowed, ...extendLimits(life, asked, settings) };
}
