/**
 * Somebody says that the place or the number of a thing left on the aircraft was mistyped, and signs. It reads otherwise
 * only once a second person has looked at the aircraft and signed too. 145.A.48; AMC M.A.305(e).
 */
import type { CorrectionAsked, CorrectableField } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { thingInWords } from '../leaving/left-items.js';
import { isSameThing } from '../leaving/same-thing.js';
import type { Signature } from '../people.js';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';
import { correct } from './correct.js';
import { readsNow } from './reads-now.js';

export const correctionAsked: ActRule<'correction-asked'> = {
  kind: 'correction-asked',
  privilege: 'write-up',
  admit(life, { act, field, item, was, now, reason }) {
    needText('the reason for the correction', reason);
    needText('what should stand there', now);
    const { defect, left } = life;
    if (readsNow(life, { act, field, item }) !== was || item === null) {
      throw new Refusal('correction-of-nothing', { act, defect, field, was: was ?? 'nothing' });
    }
    const thing = left.find(({ id }) => id === item);
    const corrected = thing === undefined ? null : { ...thing, [field]: now };
    const same = left.find((one) => corrected !== null && one.id !== item && isSameThing(one, corrected));
    if (same !== undefined && corrected !== null) {
      const words = { thing: thingInWords(corrected), as: thingInWords(same), owner: defect };
      throw new Refusal('fitted-already', words);
    }
  },
  changes: ({ asked }, act) => ({ asked: [...asked.filter(({ item }) => item !== act.item), act] }),
};

export interface AskCorrection extends Command {
  act: string;
  field: CorrectableField;
  item: string;
  was: string;
  now: string;
  reason: string;
}

export function askCorrection(life: DefectLife, command: AskCorrection, context: Context): CorrectionAsked[] {
  const { act, field, item, was, now, reason } = command;
  const said = { act, field, item, was, now, reason };
  const head = headOf(command, context);
  return decided(correctionAsked, life, { kind: 'correction-asked', ...head, defect: life.defect, ...said });
}

export interface SecondLook {
  id: string;
  /** Id of the act that asked. */
  asked: string;
  secondLook: Signature;
}

/** The correction, under the signature of the one who asked for it and of the one who looked. */
export function lookAndCorrect(life: DefectLife, { id, asked, secondLook }: SecondLook, context: Context) {
  const found = life.asked.find((one) => one.id === asked);
  if (found === undefined) throw new Refusal('correction-not-asked', { asked });
  const { by, act, field, item, was, now, reason } = found;
  const said = { act, field, was, now, reason, secondLook, ...(item === null ? {} : { item }) };
  return correct(life, { id, by, ...said }, context);
}
