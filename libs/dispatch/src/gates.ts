/** What must hold for the whole aircraft, outside any one row. */
import { judgementLeaf } from './conditions/judgement.js';
import type { Frame } from './frame/frame.js';
import { foundTogether } from './frame/combination-found.js';
import { interacts } from './frame/given-on.js';
import { personsAnswer } from './frame/judgement-state.js';
import type { Until } from './frame/until.js';
import { FF, TT } from './kleene.js';
import { byCode } from './units/unit.js';
import type { ExplainedNode, GateAnswer } from './verdict.js';

export interface JudgedGate {
  answer: GateAnswer;
  untils: Until[];
  tree?: ExplainedNode;
}

export const COMBINATION = 'combination';
const WHO_JUDGES_COMBINATIONS = 'maintenance-control';
const COMBINATION_QUESTION = 'Is the combination of open items acceptable for this flight?';

export function judgeGates(frame: Frame): JudgedGate[] {
  const { gates } = frame.situation;
  const unanswered = [...gates.unanswered, ...withoutBasis(frame)];
  return [
    listGate('unanswered-write-up', 'every write-up is answered', 'not every write-up is answered', unanswered),
    listGate('open-work', 'all work is released', 'work is open that is not released', gates.openWork),
    listGate(
      'left-on-the-aircraft',
      'nothing is left altered on the aircraft that no open item owns',
      'left altered on the aircraft, and owned by no open item',
      gates.orphans,
    ),
    ...combinationGate(frame),
  ];
}

function listGate(gate: GateAnswer['gate'], text: string, fault: string, found: readonly string[]): JudgedGate {
  const names = [...found].sort(byCode);
  const because = names.length === 0 ? text : `${fault}: ${names.join('; ')}`;
  return { answer: { gate, text, ...(names.length === 0 ? TT : FF), because }, untils: [] };
}

/** A defect on no row and no other basis is a write-up that nobody has answered. */
function withoutBasis({ situation }: Frame): string[] {
  return situation.defects.filter(({ row, basis }) => row === null && basis === undefined).map(({ id }) => id);
}

/** Items marked as without interaction stay out; a person judges the rest as soon as there are two. */
function combinationGate(frame: Frame): JudgedGate[] {
  const { settings, defects } = frame.situation;
  const interacting = defects.filter((defect) => interacts(frame, defect));
  if (!settings.combinationNeedsAcceptance || interacting.length < 2) return [];
  const answer = personsAnswer(frame, COMBINATION, WHO_JUDGES_COMBINATIONS);
  const together = foundTogether(frame, interacting);
  const found = together.length === 0 ? {} : { found: together };
  const text = `the combination of ${interacting.length} open items is accepted by a named person`;
  const because = `the combination of ${interacting.length} open items: ${answer.because}`;
  return [
    {
      answer: { gate: 'combination', text, now: answer.now, after: answer.after, because, ...found },
      untils: answer.until === undefined ? [] : [answer.until],
      tree: judgementLeaf(COMBINATION, COMBINATION_QUESTION, WHO_JUDGES_COMBINATIONS, answer),
    },
  ];
}
