/** May it fly? The verdict on one aircraft and one flight, with everything it rests on. Pure. */
export * from './situation.js';
export * from './verdict.js';
export { judge } from './judge.js';
export { EvaluatorsDisagree, type OneWay } from './evaluators-disagree.js';
export { judgeOrPropose, whatHelps, type BetterRows, type WhatHelps } from './answer/what-helps.js';
export {
  judgeBoth,
  type BothAnswers,
  type Disagreement,
  type SecondEvaluator,
  type TwoAnswers,
} from './compiled/judge-both.js';
export { compileClosure, type ClosureProviso } from './compiled/closure.js';
export { closureOf } from './compiled/closures-of-mel.js';
export type { Proposal, ProposedRow, ProposeOptions } from './proposal/proposal.js';
export { propose } from './proposal/propose.js';
export { workPlan, type WorkPlan } from './proposal/work-plan.js';
export { boundsOf, type BoundsOf } from './proposal/bounds-of.js';
export { whyRefused, type RefusedBy, type RefusedOption } from './proposal/why-refused.js';
export { leastToFix, type LeastToFix, type Repair } from './proposal/least-to-fix.js';
export { compileAll } from './frame/compiled-mel.js';
export type { CompiledProviso } from './evaluate/compiled-proviso.js';
export { compileProviso } from './evaluate/proviso-engine.js';
export { Possible, Unknown, type FactLookup, type FactValue, type FactView } from './evaluate/marker.js';
export { readCase, type CaseRead, type ReadCase } from './case-file/read-case.js';
export { readConditions } from './case-file/conditions.js';
export { CASE_SCHEMA } from './case-file/schema.js';
export type { CaseError } from './case-file/case-file.js';
export { nextFlights } from './next-flights/judge-next-flights.js';
export { atStation, sayStation } from './next-flights/at-stop.js';
export type * from './next-flights/next-flights.js';
export { glanceAhead, type GlanceAhead } from './next-flights/glance-ahead.js';
export { proposeSwap } from './swap/propose-swap.js';
export { SwapInputError } from './swap/swap-input-error.js';
export type * from './swap/rotation.js';
export { planQuestions } from './questions/plan-questions.js';
export type * from './questions/question-plan.js';
