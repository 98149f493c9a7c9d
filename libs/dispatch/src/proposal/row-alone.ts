/** One row of one defect under supposed circumstances: only some conditions count, and only some other items are open. */
import type { Mel } from '#mel';
import { highRank, type Code } from '../compiled/code.js';
import type { OpenDefect, Situation } from '../situation.js';
import { answerCases } from './answer-cases.js';
import { Board } from './board.js';
import { buildProblem } from './build-problem.js';
import { componentsOf } from './components.js';
import { explore, type Budget } from './explore.js';
import { withoutDefects } from './least-to-fix.js';
import type { Named, Problem } from './problem.js';
import { byCode } from '../units/unit.js';

/** A choice of rows that does it, by the conditions it breaks: none of those that count. */
export interface Allowed {
  broken: ReadonlySet<string>;
}

interface ProblemInParts {
  problem: Problem;
  parts: number[][];
}

/** One for each case of persons' answers. */
export interface ProblemsInParts {
  cases: ProblemInParts[];
  isWhole: boolean;
}

type Counts = ((id: string) => boolean) | null;

export class RowAlone {
  readonly #named = new Map<string, Named>();

  constructor(
    readonly mel: Mel,
    readonly situation: Situation,
    readonly defect: OpenDefect,
    readonly row: string,
    readonly budget: Budget,
    /** Made once for each set of open items, for all rows. */
    readonly problems: Map<string, ProblemsInParts>,
  ) {}

  named(id: string): Named {
    return this.#named.get(id) ?? { id, text: id };
  }

  /**
   * Is there a choice of the other rows that breaks none of these conditions (all of them when null), with these other
   * defects open? Null when there is none, `unknown` when the budget ended before that was shown.
   */
  allowed(counts: ReadonlySet<string> | Counts, openItems: readonly string[]): Allowed | null | 'unknown' {
    const some: Counts = counts === null || typeof counts === 'function' ? counts : (id) => counts.has(id);
    const { cases, isWhole } = this.#problems(openItems);
    let isKnown = isWhole;
    for (const one of cases) {
      const found = this.#allowedIn(one, some);
      if (found === 'unknown') isKnown = false;
      else if (found !== null) return found;
    }
    return isKnown ? null : 'unknown';
  }

  #allowedIn({ problem, parts }: ProblemInParts, some: Counts): Allowed | null | 'unknown' {
    const own = problem.variables.find(({ defect }) => defect?.id === this.defect.id);
    if (own?.rows.every(({ id }) => id !== this.row) === true) return null;
    const broken = new Set<string>();
    for (const variables of parts) {
      const found = this.#part(new Board(problem, variables, some));
      if (found === null || found === 'unknown') return found;
      for (const one of found) {
        this.#named.set(one.id, { id: one.id, text: one.text });
        broken.add(one.id);
      }
    }
    return { broken };
  }

  #part(board: Board): Named[] | null | 'unknown' {
    const { variables } = board.problem;
    const own = board.variables.find((one) => variables[one]!.defect?.id === this.defect.id);
    if (own !== undefined) board.chosen[own] = variables[own]!.rows.findIndex(({ id }) => id === this.row);
    let found: Named[] | null = null;
    const mayHelp = (code: Code): boolean => highRank(code) > 0;
    const isWhole = explore(board, this.budget, {
      mayHelp,
      mayChoose: mayHelp,
      found: () => (found = board.refusing()),
      isDone: () => found !== null,
    });
    return found ?? (isWhole ? null : 'unknown');
  }

  #problems(openItems: readonly string[]): ProblemsInParts {
    const open = new Set([this.defect.id, ...openItems]);
    const closed = this.situation.defects.flatMap(({ id }) => (open.has(id) ? [] : [id])).sort(byCode);
    const key = closed.join('\n');
    let known = this.problems.get(key);
    if (known === undefined) {
      const { cases, isWhole } = answerCases(this.mel, withoutDefects(this.situation, new Set(closed)));
      const inParts = cases.map(({ situation, mayTake }) => {
        const problem = buildProblem(this.mel, situation, { mayTake });
        return { problem, parts: componentsOf(problem) };
      });
      known = { cases: inParts, isWhole };
      this.problems.set(key, known);
    }
    return known;
  }
}
