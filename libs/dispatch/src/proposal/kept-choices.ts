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
import { compareLists, listOf, type RowList } from './cost.js';
import { Budget, explore } from './explore.js';
import { choiceOf, type FoundChoice } from './find-choice.js';
import { situationUnder } from './rows-of-defect.js';

/** Nodes for each part; the questions are then all that keep a condition open. */
const MOST_NODES = 2000;

export async function keptChoices(
  mel: Mel,
  situation: Situation,
  { problem, boards, lo, list }: FoundChoice,
  best: JudgedChoice,
): Promise<{ kept: JudgedChoice[]; keptAll: boolean }> {
  const ofParts = boards.map((board) => stillOpen(board, lo));
  const shown = boards.map((board) => list.filter(({ variable }) => board.variables.includes(variable)));
  let wholes: RowList[] = [[]];
  let keptAll = ofParts.every(({ isWhole }) => isWhole);
  for (const [at, { lists }] of ofParts.entries()) {
    const own = lists.length === 0 ? [shown[at]!] : lists;
    keptAll &&= wholes.length * own.length <= MOST_KEPT;
    wholes = wholes.flatMap((whole) => own.map((one) => [...whole, ...one])).slice(0, MOST_KEPT);
  }
  const sameAsBest = (one: RowList): boolean => compareLists(boards[0]!, sorted(one), sorted(list)) === 0;
  const others = wholes.filter((one) => !sameAsBest(one));
  const kept = await Promise.all(
    others.map(async (one) => {
      const choice = choiceOf(problem, one);
      const frame = new Frame(mel, situationUnder(situation, choice.recorded), closureOf);
      const readings = frame.defects.map((defect) => readingsOf(defect, defect.row, frame.fitted));
      return judgeChoice(frame, wholeReadings(readings) ?? [], choice, judgeGates(frame));
    }),
  );
  return { kept: [best, ...kept], keptAll };
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

function sorted(list: RowList): RowList {
  return [...list].sort((a, b) => a.variable - b.variable);
}
