/**
 * Goes through the choices of rows for units that are only considered inoperative, and keeps the greatest bounds
 * (rules 6 and 12). The rows of the defects are the recorded ones.
 *
 * As rows are added more units go down, and no condition gets better by that, so a choice with rows still missing is an
 * upper bound of all that follow from it. What cannot beat a bound already reached is left out.
 */
import type { Row } from '#mel';
import { better, compareBounds, highest, lowest, type Bound } from './bounds.js';
import { judgeChoice, rowsFor, valueOf, type JudgedChoice } from './choice.js';
import type { Frame } from './frame/frame.js';
import type { JudgedGate } from './gates.js';
import { allOfPairs } from './kleene.js';
import { readingsOf, wholeReadings } from './units/readings.js';
import { byCode, unitKey } from './units/unit.js';
import type { NowAfter } from './verdict.js';

/** Complete choices kept to ask which facts matter; more of them and the search goes for the bounds alone. */
export const MOST_KEPT = 64;

export interface Found {
  /** The choice that is shown: greatest lo, then greatest hi, then the first by row ids. */
  best: JudgedChoice | null;
  lo: Bound;
  hi: Bound;
  /** Complete choices that may still decide, as far as they were kept. */
  kept: JudgedChoice[];
  /** False when choices were left out of `kept`. */
  keptAll: boolean;
  /** Why the search ended early: the budget, or too many readings of the defects. */
  stopped: 'budget' | 'readings' | null;
}

export async function search(frame: Frame, gates: readonly JudgedGate[]): Promise<Found> {
  const recorded = new Map(frame.defects.map(({ id, row }) => [id, row]));
  const wholes = wholeReadings(frame.defects.map((defect) => readingsOf(defect, defect.row, frame.fitted)));
  const ceiling = highest(allOfPairs(gates.map(({ answer }) => answer)));
  const found: Found = { best: null, lo: 'may-not-fly', hi: 'may-not-fly', kept: [], keptAll: true, stopped: null };
  if (wholes === null) return { ...found, hi: ceiling, keptAll: false, stopped: 'readings' };

  const waiting: ReadonlyMap<string, Row>[] = [new Map()];
  let open = ceiling;
  for (let nodes = 0; waiting.length > 0; nodes++) {
    if (nodes >= frame.situation.settings.budget) {
      return { ...found, hi: better(found.hi, open), keptAll: false, stopped: 'budget' };
    }
    const considered = waiting.pop() ?? new Map<string, Row>();
    const judged = await judgeChoice(frame, wholes, { recorded, considered }, gates);
    const bound = upperBound(judged, gates);
    if (nodes === 0) open = highest(bound);
    if (cannotMatter(bound, found)) continue;
    const [next] = judged.rowless;
    if (next === undefined) keep(judged, found);
    else {
      const rows = [...rowsFor(frame, next)].sort((a, b) => byCode(b.id, a.id));
      waiting.push(...rows.map((row) => new Map([...considered, [unitKey(next), row]])));
    }
  }
  return found;
}

function keep(judged: JudgedChoice, found: Found): void {
  const [lo, hi] = [lowest(judged), highest(judged)];
  if (found.best === null || isBetter(lo, hi, found.best)) found.best = judged;
  found.lo = better(found.lo, lo);
  found.hi = better(found.hi, hi);
  if (found.kept.length < MOST_KEPT) found.kept.push(judged);
  else found.keptAll = false;
}

function isBetter(lo: Bound, hi: Bound, than: JudgedChoice): boolean {
  return (compareBounds(lo, lowest(than)) || compareBounds(hi, highest(than))) > 0;
}

/** The first complete choice is always kept, so that there is one to show. */
function cannotMatter(bound: NowAfter, { best, lo, hi, kept }: Found): boolean {
  if (best === null) return false;
  if (compareBounds(highest(bound), lo) <= 0) return true;
  return kept.length >= MOST_KEPT && compareBounds(lowest(bound), lo) <= 0 && compareBounds(highest(bound), hi) <= 0;
}

/** A partner that must be inoperative may still go down, so that condition alone can still get better. */
function upperBound(judged: JudgedChoice, gates: readonly JudgedGate[]): NowAfter {
  const groups = judged.groups.map(({ counts, items }) => ({
    counts,
    items: items.map((one) => {
      const rest = one.answer.conditions.filter(({ kind }) => kind !== 'needs-down');
      return rest.length === one.answer.conditions.length
        ? one
        : { ...one, answer: { ...one.answer, ...allOfPairs(rest) } };
    }),
  }));
  return allOfPairs([...groups.map(valueOf), ...gates.map(({ answer }) => answer)]);
}
