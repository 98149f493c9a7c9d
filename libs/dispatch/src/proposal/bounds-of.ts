/**
 * What is certain and what is possible under some choice of rows, and the verdict that follows, by the compiled evaluator
 * alone: for searches and for a whole fleet at a glance. What is shown with reasons, recorded or signed is `propose` and
 * `judge`, which have the rules engine's word on it.
 */
import type { Mel } from '#mel';
import { BOUNDS, highest, verdictOf, type Bound } from '../bounds.js';
import { codeOf } from '../compiled/code.js';
import { Frame } from '../frame/frame.js';
import { judgeGates } from '../gates.js';
import { allOfPairs } from '../kleene.js';
import type { Situation } from '../situation.js';
import { readingsOf, wholeReadings } from '../units/readings.js';
import type { VerdictCode } from '../verdict.js';
import { Budget } from './explore.js';
import { boundsUnder } from './find-choice.js';
import { situationUnder, someRows } from './rows-of-defect.js';

export interface BoundsOf {
  verdict: VerdictCode;
  lo: Bound;
  hi: Bound;
  /** False when the search was given up: `lo` is then only what was found, and `hi` only a bound. */
  isWhole: boolean;
}

/**
 * Under the best rows for all open defects, signed or not.
 * Throws IntervalInputError when an instant or a stored interval of the situation cannot be read.
 */
export function boundsOf(mel: Mel, situation: Situation, options: { budget?: number } = {}): BoundsOf {
  const frame = new Frame(mel, situationUnder(situation, someRows(mel, situation)));
  const closed = allOfPairs(judgeGates(frame).map(({ answer }) => answer));
  if (situation.defects.length === 0 && closed.now === 'T') {
    return { verdict: 'nothing-open', lo: 'may-fly', hi: 'may-fly', isWhole: true };
  }
  if (wholeReadings(frame.defects.map((defect) => readingsOf(defect, defect.row, frame.fitted))) === null) {
    const hi = highest(closed);
    return { verdict: verdictOf('may-not-fly', hi), lo: 'may-not-fly', hi, isWhole: false };
  }
  const found = boundsUnder(mel, situation, new Budget(options.budget ?? situation.settings.budget), codeOf(closed));
  const [lo, hi] = [BOUNDS[found.lo] ?? 'may-not-fly', BOUNDS[found.hi] ?? 'may-not-fly'];
  return { verdict: verdictOf(lo, hi), lo, hi, isWhole: found.isWhole };
}
