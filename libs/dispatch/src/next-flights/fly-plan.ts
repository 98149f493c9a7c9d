/**
 * Flies a plan through, flight by flight, under one choice of rows. Where a unit that is only considered inoperative may
 * take one of several rows the plan parts, and the row once taken stays (rule 8). Searches run by the compiled conditions;
 * what is shown of a plan is judged again by the rules engine.
 */
import type { Row } from '#mel';
import { highest, lowest, type Bound } from '../bounds.js';
import { judgeChoice, rowsFor, type JudgedChoice } from '../choice.js';
import { closureOf } from '../compiled/closures-of-mel.js';
import { Frame } from '../frame/frame.js';
import { judgeGates, type JudgedGate } from '../gates.js';
import type { PlannedFlight, Situation } from '../situation.js';
import { readingsOf, wholeReadings } from '../units/readings.js';
import { byCode, unitKey } from '../units/unit.js';
import { atStop, type Stops } from './at-stop.js';
import { flyOn } from './fly-on.js';

/** One flight judged under the choice of its plan. */
export interface Leg {
  flight: PlannedFlight;
  frame: Frame;
  gates: readonly JudgedGate[];
  /** Null when the defects can be read in too many ways to judge them. */
  judged: JudgedChoice | null;
  lo: Bound;
  hi: Bound;
}

/** A change made on the way: what is known before the flight of this index is changed, and stays so. */
export type Change = (flown: Situation, index: number) => Situation;

/** Counts search nodes, never time. */
export interface Budget {
  left: number;
}

/**
 * Every plan that follows from the situation, with the rows already taken for considered units, as long as the budget lasts.
 * The first is always given whole.
 */
export async function* flyPlans(
  stops: Stops,
  start: Situation,
  flights: readonly PlannedFlight[],
  budget: Budget,
  change: Change = (flown) => flown,
  taken: ReadonlyMap<string, Row> = new Map(),
): AsyncGenerator<Leg[]> {
  interface Waiting {
    legs: Leg[];
    flown: Situation;
    considered: ReadonlyMap<string, Row>;
  }
  const waiting: Waiting[] = [{ legs: [], flown: start, considered: taken }];
  for (let isFirst = true; waiting.length > 0 && (isFirst || budget.left > 0);) {
    const { legs, flown, considered } = waiting.pop()!;
    const flight = flights[legs.length];
    if (flight === undefined) {
      isFirst = false;
      yield legs;
      continue;
    }
    budget.left -= 1;
    const changed = change(flown, legs.length);
    const frame = new Frame(stops.mel, atStop(stops, changed, flight, legs.length === 0), closureOf);
    const gates = judgeGates(frame);
    const judged = await judgeUnder(frame, gates, considered);
    const [next] = judged?.rowless ?? [];
    if (next === undefined) {
      const lo = judged === null ? 'may-not-fly' : lowest(judged);
      const hi = judged === null ? 'may-fly' : highest(judged);
      const leg: Leg = { flight, frame, gates, judged, lo, hi };
      const rows = judged?.choice.considered ?? considered;
      waiting.push({ legs: [...legs, leg], flown: flyOn(changed, flight, judged), considered: rows });
      continue;
    }
    const rows = [...rowsFor(frame, next)].sort((a, b) => byCode(b.id, a.id));
    for (const row of rows) waiting.push({ legs, flown, considered: new Map([...considered, [unitKey(next), row]]) });
  }
}

/** Judges one frame under rows chosen before; null when the defects can be read in too many ways. */
export async function judgeUnder(
  frame: Frame,
  gates: readonly JudgedGate[],
  considered: ReadonlyMap<string, Row>,
): Promise<JudgedChoice | null> {
  const recorded = new Map(frame.defects.map(({ id, row }) => [id, row]));
  const wholes = wholeReadings(frame.defects.map((defect) => readingsOf(defect, defect.row, frame.fitted)));
  return wholes === null ? null : judgeChoice(frame, wholes, { recorded, considered }, gates);
}
