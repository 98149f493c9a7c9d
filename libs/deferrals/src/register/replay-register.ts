/** The register of an aircraft rebuilt from its acts, each checked by the rule that admitted it. */
import type { RegisterAct, RegisterActKind } from './acts.js';
import { adopted, documentEnded, handedOn } from './change-owner.js';
import { thingCorrected, thingCorrectionAsked } from './correct-thing.js';
import { found } from './find-on-aircraft.js';
import { thingStaysAsWritten } from './thing-stays.js';
import { fitted } from './fit-under-document.js';
import { shiftGiven, shiftTaken } from './hand-over-shift.js';
import { EMPTY_REGISTER, type RegisterLife } from './register-life.js';
import { registerAfter, type RegisterRule } from './register-rule.js';
import { removalSeen, removed } from './remove-from-aircraft.js';

const RULES: { [Kind in RegisterActKind]: RegisterRule<Kind> } = {
  fitted,
  found,
  removed,
  'removal-seen': removalSeen,
  adopted,
  'handed-on': handedOn,
  'document-ended': documentEnded,
  'thing-correction-asked': thingCorrectionAsked,
  'thing-corrected': thingCorrected,
  'thing-stays-as-written': thingStaysAsWritten,
  'shift-given': shiftGiven,
  'shift-taken': shiftTaken,
};

/** Throws Refusal for an impossible history. */
export function replayRegister(acts: readonly RegisterAct[], life: RegisterLife = EMPTY_REGISTER): RegisterLife {
  return acts.reduce((stands, act) => {
    const rule = Object.hasOwn(RULES, act.kind) ? RULES[act.kind] : undefined;
    if (rule === undefined) throw new Error(`No rule is known for acts of kind ${act.kind} in a register.`);
    return registerAfter(rule as RegisterRule<RegisterActKind>, stands, act);
  }, life);
}
