/**
 * One rules engine per proviso. It is built when the MEL is loaded, runs as often as that proviso is judged, and dies
 * with the MEL revision.
 *
 * Each distinct combination of facts runs through the engine once; its result tree is kept and read again, with the
 * sources and ages of the facts at hand. The engine reads facts through an almanac of ours that only looks them up, so a run builds no fact objects and hashes
 * no parameters. Its events are not used, and no priorities are given: with equal priorities it fills in every leaf.
 */
import { Almanac, Engine, type RuleResult, type TopLevelCondition } from 'json-rules-engine';
import type { Condition, Proviso } from '#mel';
import type { CompiledProviso } from './compiled-proviso.js';
import { fold, type EngineNode } from './fold.js';
import { Possible, Unknown, type FactLookup, type FactValue } from './marker.js';
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

/** The engine's result trees kept for each proviso; with more distinct facts than that it starts anew. */
const MOST_KNOWN = 64;

/** An overlapping run of the same engine can end this one before it began; that many in a row does not happen. */
const MOST_TRIES = 100;

export function compileProviso(proviso: Proviso, nameOf: NameOf = (subject) => subject): CompiledProviso {
  const plan = planOf(proviso.when, nameOf);
  // The engine wants a branch at the top.
  const conditions = plan.node === 'leaf' ? { all: [forEngine(plan)] } : forEngine(plan);
  const engine = new Engine([{ conditions: conditions as TopLevelCondition, event: { type: 'holds' } }], {
    allowUndefinedFacts: true,
  });
  const keys = [...new Set(leavesOf(plan).map((leaf) => leaf.key))];
  const known = new Map<string, EngineNode>();
  return {
    entryKeys: keys.filter((key) => key.startsWith('entry.')),
    judge: (lookup) => {
      const facts = keys.map((key) => writeValue(lookup(key).value)).join('\n');
      const before = known.get(facts);
      if (before !== undefined) return fold(plan, before, lookup);
      return runWhole(engine, lookup).then(({ conditions }) => {
        const tree = conditions as EngineNode;
        const root = plan.node === 'leaf' ? tree.all?.[0] : tree;
        if (root === undefined) throw new Error(`The rules engine gave no result tree for "${proviso.text}".`);
        if (known.size >= MOST_KNOWN) known.clear();
        known.set(facts, root);
        return fold(plan, root, lookup);
      });
    },
  };
}

/** Two facts written alike are alike to the engine: same type and value, or markers that mean the same. */
function writeValue(value: FactValue): string {
  if (value instanceof Unknown) return 'unknown';
  if (value instanceof Possible) return JSON.stringify([value.now, value.after]);
  return typeof value === 'string' ? JSON.stringify(value) : String(value);
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
