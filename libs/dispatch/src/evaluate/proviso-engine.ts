/**
 * One rules engine per proviso. It is built when the MEL is loaded, runs as often as that proviso is judged, and dies
 * with the MEL revision.
 *
 * The engine reads facts through an almanac of ours that only looks them up, so a run builds no fact objects and hashes
 * no parameters. Its events are not used, and no priorities are given: with equal priorities it fills in every leaf.
 */
import { Almanac, Engine, type RuleResult, type TopLevelCondition } from 'json-rules-engine';
import type { Condition, Proviso } from '#mel';
import type { CompiledProviso } from './compiled-proviso.js';
import { fold, type EngineNode } from './fold.js';
import type { FactLookup } from './marker.js';
import { leavesOf, planOf, type NameOf, type NodePlan } from './plan.js';

class LookupAlmanac extends Almanac {
  readonly #lookup: FactLookup;

  constructor(lookup: FactLookup) {
    super({ allowUndefinedFacts: true });
    this.#lookup = lookup;
  }

  override factValue<T>(key: string): Promise<T> {
    return Promise.resolve(this.#lookup(key).value as T);
  }
}

/** An overlapping run of the same engine can end this one before it began; that many in a row does not happen. */
const MOST_TRIES = 100;

export function compileProviso(proviso: Proviso, nameOf: NameOf = (subject) => subject): CompiledProviso {
  const plan = planOf(proviso.when, nameOf);
  // The engine wants a branch at the top.
  const conditions = plan.node === 'leaf' ? { all: [forEngine(plan)] } : forEngine(plan);
  const engine = new Engine([{ conditions: conditions as TopLevelCondition, event: { type: 'holds' } }], {
    allowUndefinedFacts: true,
  });
  const keys = new Set(leavesOf(plan).map((leaf) => leaf.key));
  return {
    entryKeys: [...keys].filter((key) => key.startsWith('entry.')),
    judge: async (lookup) => {
      const tree = (await runWhole(engine, lookup)).conditions as EngineNode;
      const root = plan.node === 'leaf' ? tree.all?.[0] : tree;
      if (root === undefined) throw new Error(`The rules engine gave no result tree for "${proviso.text}".`);
      return fold(plan, root, lookup);
    },
  };
}

/**
 * Runs the engine until it has really looked at the rule. When another run of the same engine ends between the start of
 * this one and its first step, the engine takes itself for finished and skips the rule without a word.
 */
async function runWhole(engine: Engine, lookup: FactLookup): Promise<RuleResult> {
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const { results, failureResults } = await engine.run({}, { almanac: new LookupAlmanac(lookup) });
    const whole = results[0] ?? failureResults[0];
    if (whole !== undefined) return whole;
  }
  throw new Error('The rules engine skipped its rule again and again.');
}

/** The engine's tree holds only what it needs, since it copies the tree at every run. A key stands for fact and subject. */
function forEngine(plan: NodePlan): Condition {
  if (plan.node === 'leaf') return { fact: plan.key, operator: plan.operator, value: plan.expected };
  const parts = plan.children.map(forEngine);
  if (plan.node === 'not') return { not: parts[0]! };
  return plan.node === 'all' ? { all: parts } : { any: parts };
}
