/**
 * Somebody says that what is left on the aircraft, or what decides something, was mistyped, and signs. It reads otherwise
 * only once a second person has looked and signed too. 145.A.48; AMC M.A.305(e).
 */
import type { CorrectionAsked, CorrectableField } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { thingInWords } from '../leaving/left-items.js';
import { isSameThing } from '../leaving/same-thing.js';
import type { Signature } from '../people.js';
import { Refusal } from '../refusal.js';
import type { Departure } from '../repeating/obligation.js';
import { admitCorrection, type CorrectionSaid, needsSecondLook, privilegeOfCorrection } from './admit-correction.js';
import { admitNoneLeftBetween } from './admit-none-left-between.js';
import { admitUnit, type UnitOffered } from './admit-unit.js';
import { askedAfter } from './asked-after.js';
import { correct } from './correct.js';
import { FIELD_WORDS } from './field-words.js';

export const correctionAsked: ActRule<'correction-asked'> = {
  kind: 'correction-asked',
  privilege: privilegeOfCorrection,
  afterClosing: true,
  admit(life, act) {
    admitCorrection(life, act);
    if (!needsSecondLook(life, act)) throw new Refusal('second-look-not-asked', { words: FIELD_WORDS[act.field] });
    if (act.item !== null) admitStaysItself(life, act.item, { [act.field]: act.now });
  },
  changes: (life, act) => ({ asked: [...askedAfter(life, act), act] }),
};

/** A correction does not make one thing of two. Throws Refusal `fitted-already`. */
function admitStaysItself({ left, defect }: DefectLife, item: string, now: object): void {
  const thing = left.find(({ id }) => id === item);
  const corrected = thing && { ...thing, ...now };
  const same = left.find((one) => corrected !== undefined && one.id !== item && isSameThing(one, corrected));
  if (same === undefined || corrected === undefined) return;
  throw new Refusal('fitted-already', { thing: thingInWords(corrected), as: thingInWords(same), owner: defect });
}

/** What a correction is checked against beside the history, both when it is asked for and when somebody looked. */
export interface GivenFor {
  /** Needed for the unit of a deferral: what the MEL and the other items of the aircraft say of it. */
  unit?: UnitOffered;
  /** Needed for when work was done: departures known to have flown, from the corrected time on. */
  flown?: readonly Departure[];
}

/** Throws Refusal when what is given speaks against it, or is not given. */
function admitGiven(life: DefectLife, said: CorrectionSaid, { unit, flown }: GivenFor): void {
  if (said.field === 'unit') admitUnit(life, said, unit);
  if (said.field === 'doneAt') admitNoneLeftBetween(said, flown);
}

export interface AskCorrection extends Command, GivenFor {
  act: string;
  field: CorrectableField;
  item?: string;
  part?: number;
  was: string | null;
  now: string;
  reason: string;
}

export function askCorrection(life: DefectLife, command: AskCorrection, context: Context): CorrectionAsked[] {
  const { act, field, item, part, was, now, reason } = command;
  const said = { act, field, item: item ?? null, ...(part === undefined ? {} : { part }), was, now, reason };
  const head = headOf(command, context);
  const asks = decided(correctionAsked, life, { kind: 'correction-asked', ...head, defect: life.defect, ...said });
  admitGiven(life, said, command);
  return asks;
}

export interface SecondLook extends GivenFor {
  id: string;
  /** Id of the act that asked. */
  asked: string;
  secondLook: Signature;
}

/** The correction, under the signature of the one who asked for it and of the one who looked. */
export function lookAndCorrect(life: DefectLife, look: SecondLook, context: Context) {
  const { id, asked, secondLook } = look;
  const found = life.asked.find((one) => one.id === asked);
  if (found === undefined) throw new Refusal('correction-not-asked', { asked });
  const { by, act, field, item, part, was, now, reason } = found;
  const said = {
    act,
    field,
    was,
    now,
    reason,
    ...(item === null ? {} : { item }),
    ...(part === undefined ? {} : { part }),
  };
  admitGiven(life, found, look);
  return correct(life, { id, by, ...said, secondLook }, context);
}
