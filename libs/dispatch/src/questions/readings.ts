/**
 * One answer for every combination of what the defects may be of: which unit failed. Everything else that is open can be
 * asked of these answers without judging again.
 */
import type { Mel } from '#mel';
import type { OpenFact } from '../answer/open-fact.js';
import { cellsOf, openLeaves } from '../answer/open-leaves.js';
import { openReadings, unitQuestion } from '../answer/open-readings.js';
import { revalue, type Supposed } from '../answer/revalue.js';
import { better, highest, lowest, verdictOf, type Bound } from '../bounds.js';
import type { Scalar } from '../evaluate/marker.js';
import { Frame } from '../frame/frame.js';
import { judgeGates, type JudgedGate } from '../gates.js';
import { search, type Found } from '../search.js';
import type { Situation } from '../situation.js';
import { byCode } from '../units/unit.js';
import type { ExplainedNode, VerdictCode } from '../verdict.js';

export interface Reading {
  found: Found;
  gates: readonly JudgedGate[];
}

/** More combinations than that are not gone through. */
const MOST_READINGS = 32;

export class Readings {
  readonly #byUnits = new Map<string, Reading>();

  private constructor(
    readonly now: Reading,
    /** Facts about which unit failed, each with its units. */
    readonly unitFacts: readonly OpenFact[],
    /** False when a reply is about something whose consequences are not computed here. */
    readonly exact: boolean,
  ) {}

  static async of(mel: Mel, situation: Situation): Promise<Readings> {
    const now = await readingOf(mel, situation);
    const about = openReadings(now.found.kept);
    const units = about.filter(({ key }) => key.startsWith('defect.unit[')).sort((a, b) => byCode(a.key, b.key));
    const combinations = units.reduce((count, { cells }) => count * (cells.length + 1), 1);
    const known = units.length === about.length && combinations <= MOST_READINGS;
    const readings = new Readings(now, units, known && isWhole(now));
    if (!readings.exact) return readings;
    for (const supposed of everyReading(units)) {
      readings.#byUnits.set(keyOf(units, supposed), await readingOf(mel, underUnits(situation, supposed)));
    }
    return [...readings.#byUnits.values()].every(isWhole) ? readings : new Readings(now, units, false);
  }

  /** Every fact that is open in some reading, and the leaves about it. */
  facts(): { fact: OpenFact; leaves: ExplainedNode[] }[] {
    const readings = [this.now, ...this.#byUnits.values()];
    const facts = new Map<string, OpenFact>(this.unitFacts.map((fact) => [fact.key, fact]));
    for (const { found, gates } of readings) {
      for (const fact of openLeaves(found.kept, gates)) facts.set(fact.key, joined(facts.get(fact.key), fact));
    }
    const leaves = readings.flatMap(({ found, gates }) => leavesIn(found, gates));
    return [...facts.values()]
      .sort((a, b) => byCode(a.key, b.key))
      .map((fact) =>
        cutBy(
          fact,
          leaves.filter((leaf) => leaf.fact === fact.key),
        ),
      );
  }

  verdict(supposed: Supposed): VerdictCode {
    const { found, gates } = this.#byUnits.get(keyOf(this.unitFacts, supposed)) ?? this.now;
    let [lo, hi]: [Bound, Bound] = ['may-not-fly', 'may-not-fly'];
    for (const choice of found.kept) {
      const value = revalue(choice, gates, supposed);
      lo = better(lo, lowest(value));
      hi = better(hi, highest(value));
    }
    return verdictOf(lo, hi);
  }
}

async function readingOf(mel: Mel, situation: Situation): Promise<Reading> {
  const frame = new Frame(mel, situation);
  const gates = judgeGates(frame);
  return { found: await search(frame, gates), gates };
}

function isWhole({ found }: Reading): boolean {
  return found.keptAll && found.stopped === null;
}

function keyOf(units: readonly OpenFact[], supposed: Supposed): string {
  return JSON.stringify(units.map(({ key }) => supposed.get(key) ?? null));
}

function* everyReading([first, ...rest]: readonly OpenFact[]): Generator<Map<string, Scalar>> {
  if (first === undefined) {
    yield new Map();
    return;
  }
  for (const others of everyReading(rest)) {
    yield others;
    for (const cell of first.cells) yield new Map([[first.key, cell], ...others]);
  }
}

function underUnits(situation: Situation, supposed: Supposed): Situation {
  const defects = situation.defects.map((defect) => {
    const unit = supposed.get(unitQuestion(defect.id));
    return unit === undefined ? defect : { ...defect, units: [String(unit)] };
  });
  return { ...situation, defects };
}

/** The same fact in two readings. */
function joined(one: OpenFact | undefined, other: OpenFact): OpenFact {
  if (one === undefined) return other;
  return { ...other, neededBy: [...new Set([...one.neededBy, ...other.neededBy])].sort(byCode) };
}

/** The domain is cut at the thresholds of all leaves in use, in whatever reading. */
function cutBy(fact: OpenFact, leaves: ExplainedNode[]): { fact: OpenFact; leaves: ExplainedNode[] } {
  if (fact.aboutUnits) return { fact, leaves };
  const expected = leaves.flatMap((leaf) => (Array.isArray(leaf.expected) ? leaf.expected : [leaf.expected]));
  return { fact: { ...fact, cells: cellsOf(fact.key, expected) }, leaves };
}

function leavesIn({ kept }: Found, gates: readonly JudgedGate[]): ExplainedNode[] {
  const conditions = kept.flatMap(({ groups }) =>
    groups.flatMap(({ items }) => items.flatMap(({ answer }) => answer.conditions)),
  );
  const trees = [...conditions, ...gates].flatMap(({ tree }) => tree ?? []);
  return trees.flatMap(leavesOf);
}

function leavesOf(node: ExplainedNode): ExplainedNode[] {
  return node.node === 'leaf' ? [node] : (node.children ?? []).flatMap(leavesOf);
}
