/**
 * Something that was written wrong is put right by an act of its own, signed and with its reason; the original stays
 * readable (AMC M.A.305(e); published requirement E-09 on electronic records).
 *
 * Words can be corrected, the time it occurred, the log time only to an earlier one. What is left on the aircraft, and
 * what decides something (the unit, a limit, what stays open), only after a second person looked. Everything else is put
 * right by doing the right thing.
 */
import type { CorrectableField, Corrected } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import type { Signature } from '../people.js';
import { Refusal } from '../refusal.js';
import { admitCorrection, needsSecondLook, privilegeOfCorrection } from './admit-correction.js';
import { admitEarlierDay } from './admit-earlier-day.js';
import { admitSecondLook } from './admit-second-look.js';
import { asCorrected, withDetail } from './as-corrected.js';
import { askedAfter } from './asked-after.js';
import { FIELD_WORDS, isWordOfWriteUp } from './field-words.js';
import { lifeWith } from './life-with.js';
import { recountLimits } from './recount-limits.js';

export const corrected: ActRule<'corrected'> = {
  kind: 'corrected',
  privilege: privilegeOfCorrection,
  afterClosing: true,
  admit(life, act) {
    admitCorrection(life, act);
    if (act.field === 'recordedAt') admitEarlierDay(life, act);
    if (needsSecondLook(life, act)) admitSecondLook(life, act);
    else if (act.secondLook !== null) {
      throw new Refusal('second-look-not-asked', { words: FIELD_WORDS[act.field] });
    }
  },
  changes(life, act) {
    const { field, item, now, limits } = act;
    const asked = askedAfter(life, act);
    if (field === 'where' || field === 'tag') {
      return { asked, left: life.left.map((one) => (one.id === item ? { ...one, [field]: now } : one)) };
    }
    if (field === 'recordedAt' && limits !== null) return { recordedAt: now, limits };
    if (isWordOfWriteUp(field)) return { [field]: now };
    const original = life.acts.find(({ id }) => id === act.act);
    return original ? { asked, ...lifeWith(life, withDetail(asCorrected(original, life.acts), act), act) } : {};
  },
};

export interface Correct extends Command {
  /** Id of the act that is wrong. */
  act: string;
  field: CorrectableField;
  /** The thing left on the aircraft whose place or tag was mistyped. */
  item?: string;
  /** Which of several, from 0. */
  part?: number;
  was: string | null;
  now: string;
  reason: string;
  secondLook?: Signature;
}

export function correct(life: DefectLife, command: Correct, context: Context): Corrected[] {
  const { act, field, item, part, was, now, reason, secondLook } = command;
  return decided(corrected, life, {
    kind: 'corrected',
    ...headOf(command, context),
    defect: life.defect,
    act,
    field,
    item: item ?? null,
    ...(part === undefined ? {} : { part }),
    was,
    now,
    reason,
    secondLook: secondLook ?? null,
    limits: field === 'recordedAt' ? recountLimits(life, now, context.settings) : null,
  });
}
