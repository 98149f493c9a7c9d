/**
 * May this aircraft fly this flight, with the rows that are recorded?
 *
 * The one way to an answer that may be recorded or signed: every proviso runs through the rules engine.
 */
import type { Mel } from '#mel';
import { dated } from './answer/dated.js';
import { NOT_LOOKED_AT } from './answer/not-looked-at.js';
import { questionsOf } from './answer/questions.js';
import { documentsOf, wordsOf } from './answer/only-under.js';
import { reasonsOf } from './answer/reasons.js';
import { refusedRows } from './answer/refused-rows.js';
import { validityOf } from './answer/validity.js';
import { minutesOf, workOf } from './answer/work-list.js';
import { verdictOf } from './bounds.js';
import { Frame } from './frame/frame.js';
import { inUtc } from './frame/moment.js';
import { judgeGates, type JudgedGate } from './gates.js';
import { workPlan } from './proposal/work-plan.js';
import { search, type Found } from './search.js';
import type { Situation } from './situation.js';
import type { Verdict, VerdictCode } from './verdict.js';

/** Throws IntervalInputError when an instant or a stored interval of the situation cannot be read. */
export async function judge(mel: Mel, situation: Situation): Promise<Verdict> {
  return judgeIn(new Frame(mel, situation));
}

/** The same by the evaluator of the frame. */
export async function judgeIn(frame: Frame): Promise<Verdict> {
  const gates = judgeGates(frame);
  return answerFrom(frame, gates, await search(frame, gates));
}

/** Writes out what a search over choices of rows has found. */
export async function answerFrom(frame: Frame, gates: readonly JudgedGate[], found: Found): Promise<Verdict> {
  const { mel, situation } = frame;
  const { best, lo, hi } = found;
  const nothingOpen = situation.defects.length === 0 && gates.every(({ answer }) => answer.now === 'T');
  const verdict: VerdictCode = nothingOpen ? 'nothing-open' : verdictOf(lo, hi);
  const plan = workPlan(mel, situation, { work: best === null || hi === 'may-not-fly' ? [] : workOf(best) });
  const onlyUnder = documentsOf(best);
  const mayLeave = hi !== 'may-not-fly';
  return {
    verdict,
    words: wordsOf(verdict, onlyUnder),
    onlyUnder,
    lo,
    hi,
    reason: found.stopped,
    at: inUtc('at', situation.at),
    aircraft: situation.aircraft.registration,
    flight: situation.flight?.id ?? null,
    mel: { document: mel.content.document, revision: mel.content.revision },
    items: (best?.groups ?? []).flatMap(({ items }) => items.map(({ answer }) => dated(answer, frame.at))),
    gates: gates.map(({ answer }) => answer),
    reasons: reasonsOf(verdict, found, gates),
    refusedRows: await refusedRows(frame, best),
    work: plan.steps,
    workMinutes: minutesOf(plan.steps),
    earliestOffBlockAt: mayLeave ? plan.earliestOffBlockAt : null,
    lateMinutes: mayLeave ? plan.lateMinutes : null,
    questions: questionsOf(found, gates),
    validUntil: validityOf(best, gates),
    notLookedAt: [...NOT_LOOKED_AT],
    evaluator: 'json-rules-engine',
  };
}
