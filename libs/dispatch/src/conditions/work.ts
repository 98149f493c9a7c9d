import type { Procedure, Role } from '#mel';
import type { Frame } from '../frame/frame.js';
import { workAnswer, type WorkAnswer } from '../frame/work-state.js';
import type { ExplainedNode, WorkToDo } from '../verdict.js';
import { factOf } from '#mel';
import { judged, partOf, type FixedRule, type Judged, type RowItem } from './item.js';

/** Every (M) and (O) procedure is done, as often as the row says. */
export const procedures: FixedRule = (item, frame) =>
  (item.row.procedures ?? []).map((procedure) => judgedWork(item, frame, procedure.id, procedure));

/** The placard is in place. */
export const placard: FixedRule = (item, frame) =>
  item.row.placard === undefined ? [] : [judgedWork(item, frame, 'placard', null)];

function judgedWork(item: RowItem, frame: Frame, id: string, procedure: Procedure | null): Judged {
  const work = partOf(item, id);
  const answer = workAnswer(frame, work, procedure, item.defect);
  const text = procedure === null ? placardText(item) : `(${procedure.kind}) ${procedure.text}`;
  const outstanding = answer.now !== 'T' && answer.after !== 'F';
  return judged(procedure === null ? 'placard' : 'procedure', work, text, answer, answer.because, {
    untils: answer.until === undefined ? [] : [answer.until],
    tree: workLeaf(work, text, answer),
    ...(outstanding ? { work: toDo(item, work, text, procedure) } : {}),
  });
}

/** Placards and signatures carry no minutes in a MEL; they count as none rather than as an invented figure. */
function toDo({ defect }: RowItem, work: string, text: string, procedure: Procedure | null): WorkToDo {
  const by: Role = procedure?.by ?? (procedure?.kind === 'O' ? 'commander' : 'technician');
  return {
    work,
    text,
    minutes: procedure === null ? 0 : (procedure.minutes ?? null),
    by,
    needsPersonAtStation: procedure?.needsPersonAtStation ?? false,
    ...(defect === null ? {} : { defect: defect.id }),
  };
}

function placardText({ row, entry }: RowItem): string {
  return row.placard === undefined
    ? `placard of ${entry.title}`
    : `placard "${row.placard.text}" at ${row.placard.position}`;
}

/** The same answer as a tree of one leaf; when it hangs on a fact, the leaf is about that fact. */
function workLeaf(work: string, text: string, answer: WorkAnswer): ExplainedNode {
  const fact = answer.askFact === undefined ? 'work.done' : answer.askFact;
  const definition = factOf(fact);
  const open = answer.now === 'U' || answer.after === 'U';
  return {
    node: 'leaf',
    text,
    now: answer.now,
    after: answer.after,
    fact: answer.askFact ?? `work.done[${work}]`,
    operator: 'equal',
    expected: true,
    actual: answer.now === 'T' ? true : answer.now === 'F' ? false : null,
    known: !open,
    because: answer.because,
    ...(open
      ? {
          mayAnswer:
            answer.askFact === undefined ? ['maintenance-control', 'technician'] : [...(definition?.mayAnswer ?? [])],
          question: answer.askFact === undefined ? workQuestion(text, answer) : (definition?.question ?? ''),
        }
      : {}),
  };
}

function workQuestion(text: string, { now }: WorkAnswer): string {
  return now === 'F'
    ? `Can this be done before the flight: ${text}?`
    : `Is this still valid for the flight: ${text}?`;
}
