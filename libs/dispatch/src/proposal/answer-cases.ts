/**
 * Splits the choices of rows by what decides whether a person's answer that was given on certain items holds: a defect
 * that is signed under another row than the answer names has it asked again while it keeps that row, and no longer once
 * another one is proposed. Within a case every answer holds for all choices or is asked again for all of them, so each
 * case is searched exactly; and no choice is in two cases.
 */
import type { Mel } from '#mel';
import { interacts } from '../frame/given-on.js';
import type { OpenDefect, RecordedJudgement, Situation } from '../situation.js';
import { Fitted } from '../units/fitted.js';
import { rowsOfDefect } from './rows-of-defect.js';

/** May this row be proposed for the defect? */
export type MayTake = (defect: OpenDefect, row: string | null) => boolean;

export interface AnswerCase {
  situation: Situation;
  mayTake: MayTake;
}

/** More than these are not looked at; the search then counts as given up. */
const MOST_DECIDING = 6;

export interface AnswerCases {
  cases: AnswerCase[];
  isWhole: boolean;
}

/** The situation itself, and no other case, where no answer was given on certain items. */
export function answerCases(mel: Mel, situation: Situation): AnswerCases {
  const { judgements, defects, aircraft } = situation;
  if (judgements.every(({ givenOn }) => givenOn === undefined)) {
    return { cases: [{ situation, mayTake: () => true }], isWhole: true };
  }
  const fitted = new Fitted(mel, aircraft);
  const asked = defects.filter((defect) => interacts({ mel }, defect));
  const deciding = asked.filter((defect) => judgements.some((one) => standsOtherwise(one, defect)));
  const keeps = (defect: OpenDefect): boolean => rowsOfDefect(defect, fitted).includes(defect.row);
  const mustChange = deciding.filter((defect) => !keeps(defect));
  const mayChange = deciding.filter((defect) => keeps(defect) && rowsOfDefect(defect, fitted).length > 1);
  const anyRow = asked.flatMap((defect) =>
    [null, defect.row, ...rowsOfDefect(defect, fitted)].map((row) => ({ defect: defect.id, row })),
  );
  const ofChanged = (some: readonly OpenDefect[]): AnswerCase => {
    const changed = [...mustChange, ...some];
    const left = judgements.flatMap((one): RecordedJudgement[] => {
      const { givenOn } = one;
      if (givenOn === undefined) return [one];
      return asked.every((defect) => bears(one, defect, changed))
        ? [{ ...one, givenOn: { ...givenOn, items: anyRow } }]
        : [];
    });
    const isAmong = (those: readonly OpenDefect[], id: string): boolean => those.some((one) => one.id === id);
    const mayTake: MayTake = ({ id, row }, other) =>
      !isAmong(deciding, id) || (row !== other) === isAmong(changed, id);
    return { situation: { ...situation, judgements: left }, mayTake };
  };
  return {
    cases: subsetsOf(mayChange.slice(0, MOST_DECIDING)).map(ofChanged),
    isWhole: mayChange.length <= MOST_DECIDING,
  };
}

function bears(one: RecordedJudgement, defect: OpenDefect, changed: readonly OpenDefect[]): boolean {
  if (one.givenOn?.items.every((item) => item.defect !== defect.id) === true) return false;
  return !standsOtherwise(one, defect) || changed.includes(defect);
}

/** The defect was looked at, and is signed under another row. */
function standsOtherwise({ givenOn }: RecordedJudgement, { id, row, signed }: OpenDefect): boolean {
  const items = (givenOn?.items ?? []).filter((item) => item.defect === id);
  return signed && items.length > 0 && items.every((item) => item.row !== row);
}

/** The smallest change first. */
function subsetsOf(defects: readonly OpenDefect[]): OpenDefect[][] {
  let subsets: OpenDefect[][] = [[]];
  for (const defect of defects) subsets = [...subsets, ...subsets.map((some) => [...some, defect])];
  return subsets.sort((a, b) => a.length - b.length);
}
