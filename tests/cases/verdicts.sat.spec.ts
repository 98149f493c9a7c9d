/**
 * Kleene truth beside an outside SAT solver (logic-solver 2.0.1): where the engine's fold says T or F of a tree with
 * unknown facts, every completion says the same. The solver may decide more ("p or not p"), and that stays U here.
 */
import fc from 'fast-check';
import { and, not, or, Solver, type Formula } from 'logic-solver';
import { describe, expect, it } from 'vitest';
import { compileProviso, Unknown } from '#dispatch';
import { factKey, type Condition } from '#mel';

const FACTS = ['flight.rvsm', 'flight.overWater', 'flight.lowVisibility', 'flight.visibleMoisture'];
const leaf = fc
  .record({ fact: fc.constantFrom(...FACTS), value: fc.boolean(), same: fc.boolean() })
  .map(({ fact, value, same }): Condition => ({ fact, operator: same ? 'equal' : 'notEqual', value }));
const { tree } = fc.letrec<{ tree: Condition }>((tie) => ({
  tree: fc.oneof(
    { maxDepth: 4, withCrossShrink: true },
    leaf,
    fc.array(tie('tree'), { minLength: 1, maxLength: 3 }).map((all) => ({ all })),
    fc.array(tie('tree'), { minLength: 1, maxLength: 3 }).map((any) => ({ any })),
    tie('tree').map((part) => ({ not: part })),
  ),
}));

function formulaOf(condition: Condition): Formula {
  if ('all' in condition) return and(...condition.all.map(formulaOf));
  if ('any' in condition) return or(...condition.any.map(formulaOf));
  if ('not' in condition) return not(formulaOf(condition.not));
  const atom = factKey(condition);
  return (condition.value === true) === (condition.operator === 'equal') ? atom : not(atom);
}

/** Can the tree be true, with the known facts as they are? */
function canBe(formula: Formula, known: Record<string, boolean | null>): boolean {
  const solver = new Solver();
  solver.require(formula);
  for (const [fact, value] of Object.entries(known)) if (value !== null) solver.require(value ? fact : not(fact));
  return solver.solve() !== null;
}

describe('Kleene truth beside a SAT solver', () => {
  it('says T only of what no completion makes false, and F only of what none makes true', async () => {
    const known = fc.record(Object.fromEntries(FACTS.map((fact) => [fact, fc.constantFrom(true, false, null)])));
    const seen = { T: 0, U: 0, F: 0 };
    await fc.assert(
      fc.asyncProperty(tree, known, async (when, facts: Record<string, boolean | null>) => {
        const lookup = (key: string) => ({ value: facts[key] ?? new Unknown('nobody has said') });
        const { now } = await compileProviso({ id: 'a', text: 'a', when }).judge(lookup);
        seen[now] += 1;
        if (now === 'T') expect(canBe(not(formulaOf(when)), facts)).toBe(false);
        if (now === 'F') expect(canBe(formulaOf(when), facts)).toBe(false);
      }),
      { numRuns: 300 },
    );
    expect(Math.min(seen.T, seen.U, seen.F), JSON.stringify(seen)).toBeGreaterThan(20);
  });

  it('leaves "p or not p" unsettled though the solver settles it', async () => {
    const p: Condition = { fact: 'flight.rvsm', operator: 'equal', value: true };
    const when: Condition = { any: [p, { not: p }] };
    const { now } = await compileProviso({ id: 'a', text: 'a', when }).judge(() => ({ value: new Unknown('?') }));
    expect(now).toBe('U');
    expect(canBe(not(formulaOf(when)), {})).toBe(false);
  });
});
