/**
 * The order of questions that needs fewest on average, by dynamic programming over all states of knowledge.
 *
 * A question is asked only while the answer is not settled and some reply to it could still settle it, now or after other
 * replies. When no reply to anything can settle it, nothing is asked.
 */
import { isSettled, keyOf, learn, openFacts, type Known, type Lattice } from './lattice.js';

export interface Step {
  /** The fact to ask; null when the answer is settled or nothing can settle it. */
  ask: number | null;
  expected: number;
}

export class LeastExpected {
  readonly #steps = new Map<string, Step>();
  readonly #matters = new Map<string, boolean>();

  constructor(readonly lattice: Lattice) {}

  step(known: Known): Step {
    const key = keyOf(known);
    const seen = this.#steps.get(key);
    if (seen !== undefined) return seen;
    const step = this.#best(known);
    this.#steps.set(key, step);
    return step;
  }

  #best(known: Known): Step {
    let best: Step = { ask: null, expected: 0 };
    if (isSettled(this.lattice, known)) return best;
    for (const fact of openFacts(known)) {
      if (!this.matters(known, fact)) continue;
      const { weights } = this.lattice.facts[fact]!;
      const expected = weights.reduce(
        (sum, by, reply) => sum + (by === 0 ? 0 : by * this.step(learn(known, fact, reply)).expected),
        1,
      );
      if (best.ask === null || expected < best.expected - 1e-9) best = { ask: fact, expected };
    }
    return best;
  }

  /** Is there a state, this one or one with other facts known, that is not settled and that a reply would settle? */
  matters(known: Known, fact: number): boolean {
    const key = `${fact}: ${keyOf(known)}`;
    const seen = this.#matters.get(key);
    if (seen !== undefined) return seen;
    const answer = this.#canMatter(known, fact);
    this.#matters.set(key, answer);
    return answer;
  }

  #canMatter(known: Known, fact: number): boolean {
    if (isSettled(this.lattice, known)) return false;
    const replies = (of: number): Known[] =>
      this.lattice.facts[of]!.weights.map((_, reply) => learn(known, of, reply));
    if (replies(fact).some((after) => isSettled(this.lattice, after))) return true;
    return openFacts(known).some((other) => other !== fact && replies(other).some((one) => this.matters(one, fact)));
  }
}
