/** The choices that may still decide once unknown facts are known: the questions worth asking are read off them. */
import type { Mel } from '#mel';
import { judgeChoice, type JudgedChoice } from '../choice.js';
import { highRank } from '../compiled/code.js';
import { closureOf } from '../compiled/closures-of-mel.js';
import { Frame } from '../frame/frame.js';
import { judgeGates } from '../gates.js';
import { MOST_KEPT } from '../search.js';
import type { Situation } from '../situation.js';
import { readingsOf, wholeReadings } from '../units/readings.js';
import type { Board } from './board.js';
import { byPlace, compareLists, listOf, type RowList } from './cost.js';
import { Budget, explore } from './explore.js';
import { choiceOf, type FoundCase, type FoundChoice } from './find-choice.js';
import { situationUnder } from './rows-of-defect.js';

/** Nodes for each part; the questions are then all that keep a condition open. */
const MOST_NODES = 2000;

export async function keptChoices(
  mel: Mel,
  situation: Situation,
  found: FoundChoice,
  best: JudgedChoice,
): Promise<{ kept: JudgedChoice[]; keptAll: boolean }> {
  const { lo, list, boards } = found;
  const own = wholesOf(found, lo);
  const sameAsBest = (one: RowList): boolean => compareLists(boards[0]!, byPlace(one), byPlace(list)) === 0;
  const others = found.others.filter((one) => mayStillDecide(one, lo));
  const ofOthers = others.map((one) => ({ problem: one.problem, ...wholesOf(one, lo) }));
  const choices = [
    ...own.wholes.filter((one) => !sameAsBest(one)).map((one) => choiceOf(found.problem, one)),
    ...ofOthers.flatMap(({ problem, wholes }) => wholes.map((one) => choiceOf(problem, one))),
  ];
  const kept = await Promise.all(
    choices.slice(0, MOST_KEPT).map(async (choice) => {
      const frame = new Frame(mel, situationUnder(situation, choice.recorded), closureOf);
      const readings = frame.defects.map((defect) => readingsOf(defect, defect.row, frame.fitted));
      return judgeChoice(frame, wholeReadings(readings) ?? [], choice, judgeGates(frame));
    }),
  );
  const keptAll = [own, ...ofOthers].every((one) => one.keptAll) && choices.length <= MOST_KEPT;
  return { kept: [best, ...kept], keptAll: keptAll && found.allCases };
}

function mayStillDecide({ boards, closed }: FoundCase, lo: number): boolean {
  const ceiling = boards.reduce((all, board) => all & board.update(), closed);
  return highRank(ceiling) > lo;
}

function wholesOf({ boards, list }: FoundCase, lo: number): { wholes: RowList[]; keptAll: boolean } {
  const ofParts = boards.map((board) => stillOpen(board, lo));
  const shown = boards.map((board) => list.filter(({ variable }) => board.variables.includes(variable)));
  let wholes: RowList[] = [[]];
  let keptAll = ofParts.every(({ isWhole }) => isWhole);
  for (const [at, { lists }] of ofParts.entries()) {
    const own = lists.length === 0 ? [shown[at]!] : lists;
    keptAll &&= wholes.length * own.length <= MOST_KEPT;
    wholes = wholes.flatMap((whole) => own.map((one) => [...whole, ...one])).slice(0, MOST_KEPT);
  }
  return { wholes, keptAll };
}

/** Whole choices of one part that might turn out better than what is certain already. */
function stillOpen(board: Board, lo: number): { lists: RowList[]; isWhole: boolean } {
  const lists: RowList[] = [];
  const mayHelp = (code: number): boolean => highRank(code) > lo;
  const isWhole = explore(board, new Budget(MOST_NODES), {
    mayHelp,
    mayChoose: mayHelp,
    found: () => lists.push(listOf(board)),
    isDone: () => lists.length > MOST_KEPT,
  });
  return { lists: lists.slice(0, MOST_KEPT), isWhole: isWhole && lists.length <= MOST_KEPT };
}
