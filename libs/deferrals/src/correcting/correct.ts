/**
 * Something that was written wrong is put right by an act of its own, signed and with its reason; the original stays
 * readable (AMC M.A.305(e); published requirement E-09 on electronic records).
 *
 * Words can be corrected, the time it occurred, the log time only to an earlier one, and what is left on the aircraft only after a second
 * person looked. Everything else is put right by doing the right thing.
 */
import type { CorrectableField, Corrected } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import type { Signature } from '../people.js';
import { Refusal } from '../refusal.js';
import { admitTimes } from '../writing-up/admit-times.js';
import { needText } from '../writing-up/need-text.js';
import { admitEarlierDay } from './admit-earlier-day.js';
import { admitSecondLook } from './admit-second-look.js';
import { readsNow } from './reads-now.js';
import { recountLimits } from './recount-limits.js';

export const corrected: ActRule<'corrected'> = {
  kind: 'corrected',
  privilege: 'write-up',
  afterClosing: true,
  admit(life, act) {
    needText('the reason for the correction', act.reason);
    needText('what should stand there', act.now);
    if (readsNow(life, act) !== act.was) {
      const { act: pointsAt, field } = act;
      throw new Refusal('correction-of-nothing', {
        act: pointsAt,
        defect: life.defect,
        field,
        was: act.was ?? 'nothing',
      });
    }
    if (act.field === 'recordedAt') admitEarlierDay(life, act);
    if (act.field === 'occurredAt') admitTimes({ ...life, occurredAt: act.now });
    if (act.item !== null) admitSecondLook(life, act);
  },
  changes(life, { field, item, now, limits }) {
    if (field === 'where' || field === 'tag') {
      const asked = life.asked.filter((one) => one.item !== item);
      return { asked, left: life.left.map((one) => (one.id === item ? { ...one, [field]: now } : one)) };
    }
    return field === 'recordedAt' && limits !== null ? { recordedAt: now, limits } : { [field]: now };
  },
};

export interface Correct extends Command {
  /** Id of the act that is wrong: the write-up, or the one that left the thing on the aircraft. */
  act: string;
  field: CorrectableField;
  /** The thing left on the aircraft whose place or tag was mistyped. */
  item?: string;
  was: string | null;
  now: string;
  reason: string;
  secondLook?: Signature;
}

export function correct(life: DefectLife, command: Correct, context: Context): Corrected[] {
  const { act, field, item, was, now, reason, secondLook } = command;
  return decided(corrected, life, {
    kind: 'corrected',
    ...headOf(command, context),
    defect: life.defect,
    act,
    field,
    item: item ?? null,
    was,
    now,
    reason,
    secondLook: secondLook ?? null,
    limits: field === 'recordedAt' ? recountLimits(life, now, context.settings) : null,
  });
}
