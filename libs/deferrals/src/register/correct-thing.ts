/**
 * A thing whose place or number was mistyped: one person says so, another looks at the aircraft and signs, and only then
 * does the register read otherwise. The original stays readable. 145.A.48; AMC M.A.305(e).
 */
import type { LeftItem } from '../act-parts.js';
import type { Context } from '../context.js';
import { FIELD_WORDS } from '../correcting/field-words.js';
import { nothingToCorrect } from '../correcting/nothing-to-correct.js';
import { admitUndone } from '../leaving/left-items.js';
import { isSameThing } from '../leaving/same-thing.js';
import { thingInWords } from '../leaving/left-items.js';
import type { Signature } from '../people.js';
import { Refusal } from '../refusal.js';
import { admitSignature } from '../signing/admit-signature.js';
import { needText } from '../writing-up/need-text.js';
import type { ThingCorrected, ThingCorrectionAsked } from './acts.js';
import { itemsOf, type RegisterLife } from './register-life.js';
import { registered, registerHead, type RegisterCommand, type RegisterRule } from './register-rule.js';

export const thingCorrectionAsked: RegisterRule<'thing-correction-asked'> = {
  kind: 'thing-correction-asked',
  privilege: 'write-up',
  admit(life, { item, field, was, now, reason, aircraft }) {
    needText('the reason for the correction', reason);
    needText('what should stand there', now);
    const left = itemsOf(life);
    admitUndone({ left, defect: aircraft.registration }, [item]);
    const thing = left.find((one) => one.id === item);
    if (thing?.[field] !== was) {
      const entry = `the register of things left on ${aircraft.registration}`;
      throw nothingToCorrect({ entry, words: FIELD_WORDS[field], was });
    }
    staysItself(left, item, { ...thing, [field]: now });
  },
  changes: ({ asked }, act) => ({ asked: [...asked.filter(({ item }) => item !== act.item), act] }),
};

export const thingCorrected: RegisterRule<'thing-corrected'> = {
  kind: 'thing-corrected',
  privilege: 'write-up',
  admit(life, { asked: pointsAt, by, secondLook, enteredAt, aircraft }) {
    const asked = life.asked.find(({ id }) => id === pointsAt);
    const stands = itemsOf(life).find(({ id }) => id === asked?.item);
    if (asked === undefined || stands?.[asked.field] !== asked.was || asked.by.person !== by.person) {
      throw new Refusal('correction-not-asked', { asked: pointsAt });
    }
    admitSignature(secondLook, 'inspect', { aircraft, enteredAt, act: 'second look' });
    if (secondLook.person === by.person) throw new Refusal('same-person-looking', { name: by.name });
    staysItself(itemsOf(life), asked.item, { ...stands, [asked.field]: asked.now });
  },
  changes({ things, asked }, { asked: pointsAt }) {
    const right = asked.find(({ id }) => id === pointsAt);
    if (right === undefined) return {};
    return {
      asked: asked.filter((one) => one !== right),
      things: things.map((thing) =>
        thing.item.id === right.item ? { ...thing, item: { ...thing.item, [right.field]: right.now } } : thing,
      ),
    };
  },
};

/** A correction does not make one thing of two. Throws Refusal `fitted-already`. */
function staysItself(left: readonly LeftItem[], id: string, corrected: LeftItem): void {
  const same = left.find((one) => one.id !== id && isSameThing(one, corrected));
  if (same === undefined) return;
  const words = thingInWords(same);
  throw new Refusal('fitted-already', { thing: thingInWords(corrected), as: words, owner: 'another line' });
}

export interface AskThingCorrection extends RegisterCommand {
  item: string;
  field: 'where' | 'tag';
  was: string;
  now: string;
  reason: string;
}

export function askThingCorrection(
  life: RegisterLife,
  command: AskThingCorrection,
  context: Context,
): ThingCorrectionAsked[] {
  const { item, field, was, now, reason } = command;
  const said = { item, field, was, now, reason };
  return registered(thingCorrectionAsked, life, {
    kind: 'thing-correction-asked',
    ...registerHead(command, context),
    ...said,
  });
}

export interface CorrectThing extends Omit<RegisterCommand, 'by'> {
  asked: string;
  secondLook: Signature;
}

/** The correction stands under the signature of the one who asked for it and of the one who looked. */
export function correctThing(life: RegisterLife, command: CorrectThing, context: Context): ThingCorrected[] {
  const { asked, secondLook } = command;
  const by = life.asked.find(({ id }) => id === asked)?.by;
  if (by === undefined) throw new Refusal('correction-not-asked', { asked });
  const head = registerHead({ ...command, by }, context);
  return registered(thingCorrected, life, { kind: 'thing-corrected', ...head, asked, secondLook });
}
