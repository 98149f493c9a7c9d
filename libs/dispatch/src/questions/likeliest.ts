/**
 * What to ask when too many facts are open to compare all orders: the question most likely to settle the answer at once.
 * Where none can alone, one of a small set of facts that settle it together.
 */
import { isSettled, learn, nothingKnown, openFacts, settles, type Known, type Lattice } from './lattice.js';

/** Facts that a reply to is shown to matter, the one to ask first in front. */
export function likeliest(lattice: Lattice): number[] {
  const start = nothingKnown(lattice);
  if (isSettled(lattice, start)) return [];
  const open = openFacts(start);
  const alone = open
    .map((fact) => ({ fact, by: settles(lattice, start, fact) }))
    .filter(({ by }) => by > 0)
    .sort((a, b) => b.by - a.by || a.fact - b.fact)
    .map(({ fact }) => fact);
  const together = settlingSets(lattice, start)
    .sort((a, b) => a.length - b.length)
    .flat();
  return [...new Set([...alone, ...together])];
}

/**
 * Sets of replies that settle the answer and of which none can be left out, so that a reply to each of them matters. They
 * are cut down from states in which everything is known: all first replies, all second ones, and so on, and the reply
 * most in favour of each side.
 */
function settlingSets(lattice: Lattice, start: Known): number[][] {
  const most = Math.max(...lattice.facts.map(({ weights }) => weights.length));
  const whole = Array.from({ length: most }, (_, turn): Known =>
    lattice.facts.map(({ weights }) => Math.min(turn, weights.length - 1)),
  );
  return [...whole, ...leaning(lattice, whole[0] ?? [])].flatMap((state) => {
    if (!isSettled(lattice, state)) return [];
    const least = openFacts(start).reduce<Known>((known, fact) => {
      const without = known.with(fact, null);
      return isSettled(lattice, without) ? without : known;
    }, state);
    return [openFacts(start).filter((fact) => least[fact] !== null)];
  });
}

/** From one whole state, each fact turned to the reply that gives the answer most, or least, fact by fact. */
function leaning(lattice: Lattice, from: Known): Known[] {
  const rank = { 'may-not-fly': 0, 'not-settled': 1, 'after-work': 2, 'may-fly': 3, 'nothing-open': 3 };
  const towards = (sign: 1 | -1): Known =>
    lattice.facts.reduce<Known>((state, { weights }, fact) => {
      const turned = weights.map((_, reply) => learn(state, fact, reply));
      const value = (known: Known): number => sign * rank[lattice.verdict(known)];
      return turned.reduce((best, one) => (value(one) > value(best) ? one : best), state);
    }, from);
  return [towards(1), towards(-1)];
}
