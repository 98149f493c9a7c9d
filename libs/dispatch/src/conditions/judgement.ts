import type { JudgementAsked } from '#mel';
import type { Frame } from '../frame/frame.js';
import { personsAnswer, type PersonsAnswer } from '../frame/judgement-state.js';
import type { Role } from '#mel';
import type { ExplainedNode } from '../verdict.js';
import { judged, partOf, type FixedRule } from './item.js';

/** Every question of the row that only a person can settle is answered with yes by the role it is addressed to. */
export const judgements: FixedRule = (item, frame) =>
  (item.row.judgements ?? []).map((asked) => one(partOf(item, asked.id), asked, frame));

function one(key: string, { question, by }: JudgementAsked, frame: Frame) {
  const answer = personsAnswer(frame, key, by);
  const untils = answer.until === undefined ? [] : [answer.until];
  return judged('judgement', key, question, answer, answer.because, {
    untils,
    tree: judgementLeaf(key, question, by, answer),
  });
}

/** The same answer as a tree of one leaf. */
export function judgementLeaf(key: string, question: string, by: Role, answer: PersonsAnswer): ExplainedNode {
  const open = answer.now === 'U';
  return {
    node: 'leaf',
    text: question,
    now: answer.now,
    after: answer.after,
    fact: `judgement.accepted[${key}]`,
    operator: 'equal',
    expected: true,
    actual: open ? null : answer.now === 'T',
    known: !open,
    because: answer.because,
    ...(open ? { mayAnswer: [by], question } : {}),
  };
}
