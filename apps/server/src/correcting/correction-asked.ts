import { Injectable } from '@nestjs/common';
import {
  type Act,
  admitDoneEarlier,
  admitNoneLeftBetween,
  asCorrected,
  type CorrectableField,
  type DefectLife,
  FIELD_WORDS,
  type GivenFor,
  needsSecondLook,
  notByCorrection,
  type NeverCorrected,
  readsNow,
  readsOtherwise,
  Refusal,
  thingInWords,
  type UnitOffered,
  waitingBy,
  unitsWith,
} from '#deferrals';
import { type BesideOthers, DeferralCheck } from '../defects/deferral-check.js';
import { Problem } from '../http/problem.js';
import { flownDepartures } from '../movements/flown-legs.js';
import { MelShelf } from '../mel/mel-shelf.js';
import type { FieldAsked } from './correctable.js';
import type { OperatorSettings } from '../people/operator-settings.js';
import { repeatLines } from '../defects/repeats.js';
import { extensionMoves } from './extension-corrected.js';
import {
  admitWords,
  judgedWords,
  movesInWords,
  owedWords,
  readsInPlaceOf,
  staysInWords,
} from './correction-words.js';

/** Where a correction points, and what it should read. */
export interface Pointed {
  of?: string;
  field?: FieldAsked;
  part?: number;
  now?: string;
}

/** What reads otherwise and what that moves, in words, with what the correction is checked against. */
export interface Said {
  words: string;
  given: GivenFor;
}

/** A correction as it is to be signed. */
export interface Prepared extends Said {
  act: string;
  field: CorrectableField;
  part?: number;
  was: string | null;
  now: string;
  secondLook: boolean;
}

/** The aircraft and the life that are corrected. */
export type Corrects = BesideOthers & { life: DefectLife };

/** Reads what a correction would change, for the statement that is shown and again for the act. */
@Injectable()
export class CorrectionAsked {
  constructor(
    private readonly check: DeferralCheck,
    private readonly shelf: MelShelf,
  ) {}

  async prepare(corrects: Corrects, { of, field, part, now }: Pointed): Promise<Prepared> {
    const { life } = corrects;
    if (field === undefined || now === undefined) throw incomplete();
    const act = of === undefined ? life.acts[0] : life.acts.find(({ id }) => id === of);
    if (act === undefined) throw new Problem('not-found', `No act ${of ?? ''} stands in this history.`);
    if (!isCorrectable(field)) throw notByCorrection(life.defect, act, field);
    admitWords(field, now);
    const points = { act: act.id, field, ...(part === undefined ? {} : { part }) };
    const was = readsNow(life, { ...points, item: null });
    if (was === undefined) throw readsOtherwise(life, points);
    const secondLook = needsSecondLook(life, { ...points, item: null, was, now });
    return { ...points, was, now, secondLook, ...(await this.consequences(corrects, act, { ...points, was, now })) };
  }

  /** What waits for the second person. */
  waiting(corrects: Corrects, asked: string | undefined): Promise<Said> {
    const { life } = corrects;
    const found = life.asked.find(({ id, item }) => id === asked && item === null);
    const act = life.acts.find(({ id }) => id === found?.act);
    if (found === undefined || act === undefined)
      throw new Refusal('correction-not-asked', { asked: asked ?? 'none' });
    return this.consequences(corrects, act, found);
  }

  /** That one of them is not made; `reader` takes it back where it was they who asked. */
  staying(life: DefectLife, asked: string | undefined, reader: string, { deferral }: OperatorSettings) {
    // What is left on the aircraft is put right in its register, for all who own it at once.
    const waits = life.asked.filter(({ item }) => item === null);
    const { act: of, field, was, now, by } = waitingBy({ asked: waits }, asked ?? 'none');
    const act = life.acts.find(({ id }) => id === of);
    const correction =
      act === undefined ? '' : staysInWords(asCorrected(act, life.acts), field, [was, now], deferral.base);
    return { correction, takenBack: by.person === reader };
  }

  private async consequences(
    corrects: Corrects,
    act: Act,
    { field, part, was, now }: { field: CorrectableField; part?: number; was: string | null; now: string },
  ): Promise<Said> {
    const { life, settings } = corrects;
    const reads = asCorrected(act, life.acts);
    const words = readsInPlaceOf(reads, field, [was, now], settings.deferral.base);
    if (field === 'doneAt') {
      admitDoneEarlier(was, now);
      const flown = await flownDepartures(corrects.tx, corrects.aircraft.id, now);
      admitNoneLeftBetween({ was, now }, flown);
      return { words: `${words} ${await this.doneMoves(corrects, act, now)}`, given: { flown } };
    }
    if (act.kind === 'extended') return { words: `${words} ${await extensionMoves(corrects, act)}`, given: {} };
    if (field !== 'unit') return { words: `${words} ${movesInWords(life, field, now, settings)}`, given: {} };
    const units = unitsWith(life, { act: act.id, ...(part === undefined ? {} : { part }), now });
    const basis = life.deferral?.basis;
    const row = basis?.kind === 'mel-row' ? { row: basis.row } : {};
    const item = life.item && { ...life.item, units };
    const fails = await this.check.failsBesideOthers(corrects, { ...life, item }, row);
    const unit = await this.unitOffered(corrects, row);
    return { words: `${words} No limit moves. ${judgedWords(fails, life.left.map(thingInWords))}`, given: { unit } };
  }

  /** What is owed then that was not: a time that is earlier is good for less. */
  private async doneMoves({ tx, aircraft, life, settings, at }: Corrects, { id }: Act, now: string): Promise<string> {
    const procedures = life.procedures.map((one) => (one.id === id ? { ...one, doneAt: now } : one));
    const before = await repeatLines(tx, aircraft, life, settings, at);
    const after = await repeatLines(tx, aircraft, { ...life, procedures }, settings, at);
    return owedWords(before, after);
  }

  private async unitOffered({ tx, aircraft, life, opened }: Corrects, row: { row?: string }): Promise<UnitOffered> {
    const mel = await this.shelf.inForce(tx, aircraft.type);
    const { installed } = this.check.itemOf(mel, aircraft, { entry: life.item?.entry ?? '', units: [] });
    const others = opened.filter(({ row: one }) => one.id !== life.defect).map((one) => one.life);
    return { offered: await this.check.offered({ tx, aircraft }, life, row), installed, others };
  }
}

function isCorrectable(field: FieldAsked): field is Exclude<FieldAsked, NeverCorrected> {
  return Object.hasOwn(FIELD_WORDS, field);
}

function incomplete(): Problem {
  const reason = 'a correction needs field and now';
  return new Problem('invalid-input', reason, { errors: [{ pointer: '/field', reason }] });
}
