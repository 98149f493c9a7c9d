/** What a board keeps while rows are taken and taken back is what a fresh board finds under the same rows. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { proposalCase } from '../../../../tests/cases/proposals.random.js';
import { Board } from './board.js';
import { buildProblem } from './build-problem.js';
import { NONE } from './chosen-rows.js';

const steps = fc.array(fc.record({ variable: fc.nat(), row: fc.nat(), back: fc.nat({ max: 3 }) }), {
  minLength: 1,
  maxLength: 24,
});

function seenOn(board: Board): object {
  const value = board.update();
  const open = board.active.filter((variable) => board.isOpen(variable));
  return {
    value,
    active: [...board.active],
    worth: open.map((variable) =>
      board.problem.variables[variable]!.rows.map((_, row) => board.worthOf(variable, row)),
    ),
    refusing: board.refusing().map(({ id }) => id),
  };
}

it('keeps nothing that another step made untrue', () => {
  let compared = 0;
  fc.assert(
    fc.property(proposalCase, steps, ({ mel, situation }, walk) => {
      const problem = buildProblem(mel, situation);
      const all = problem.variables.map((_, at) => at);
      const choosable = all.filter((at) => problem.variables[at]!.rows.length > 1);
      const kept = new Board(problem, all);
      for (const { variable: at, row, back } of choosable.length > 0 ? walk : []) {
        const variable = choosable[at % choosable.length]!;
        kept.chosen[variable] = back === 0 ? NONE : row % problem.variables[variable]!.rows.length;
        const fresh = new Board(problem, all);
        fresh.chosen.set(kept.chosen);
        expect(seenOn(kept)).toEqual(seenOn(fresh));
        compared += 1;
      }
    }),
    { numRuns: 1_000 },
  );
  expect(compared).toBeGreaterThan(2_000);
});
