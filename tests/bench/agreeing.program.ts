/** Random cases against the enumeration of everything unknown, as many as asked for. Prints one JSON line at the end. */
import { drawCases } from '../cases/verdicts.draw.js';
import { wrongIn } from '../cases/verdicts.enumeration.js';
import { Tally } from '../cases/verdicts.tally.js';
import { Dice } from '../support/dice.js';

const [count = 0, seed = 0] = process.argv.slice(2).map(Number);
const CASES_EACH = 10;

const dice = new Dice(seed);
const tally = new Tally();
const start = performance.now();
while (tally.cases < count) {
  const from = dice.upTo(2 ** 31);
  for (const [at, drawn] of drawCases(from, CASES_EACH).entries()) {
    const wrong = wrongIn(drawn, tally);
    if (wrong !== null) throw new Error(`case ${at} of seed ${from}: ${wrong}`);
  }
}
console.log(
  JSON.stringify({ cases: tally.cases, seconds: (performance.now() - start) / 1000, seed, spread: String(tally) }),
);
