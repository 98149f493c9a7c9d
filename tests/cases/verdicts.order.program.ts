/**
 * Judges random cases in a process of its own, and prints a line for each: a digest of all answers about it. With a number
 * after the count, everything is written down in another order first, by that number.
 */
import { createHash } from 'node:crypto';
import { judge, leastToFix, nextFlights, planQuestions, propose, whyRefused, type PlannedFlight } from '#dispatch';
import { Dice } from '../support/dice.js';
import { drawCases, type DrawnCase } from './verdicts.draw.js';
import { rearranged } from './verdicts.rearranged.js';

const [seed = 0, mels = 0, other] = process.argv.slice(2).map(Number);
const { locale, timeZone } = new Intl.DateTimeFormat().resolvedOptions();
console.log(`${locale} ${timeZone}`);

const later = (id: string, hour: number): PlannedFlight => ({
  id,
  from: 'Saltby',
  to: 'Northmere',
  offBlockAt: `2026-03-10T${hour}:00Z`,
  onBlockAt: `2026-03-10T${hour + 1}:00Z`,
});

async function answers({ mel, situation }: DrawnCase): Promise<unknown[]> {
  const flights = situation.flight === null ? [] : [situation.flight, later('F2', 12), later('F3', 15)];
  return [
    await judge(mel, situation),
    await propose(mel, situation),
    await nextFlights(mel, situation, flights),
    leastToFix(mel, situation),
    whyRefused(mel, situation),
    await planQuestions(mel, situation),
  ];
}

const dice = new Dice(seed);
for (let count = 0; count < mels; count += 1) {
  for (const drawn of drawCases(dice.upTo(2 ** 31), 3)) {
    const one = other === undefined ? drawn : rearranged(drawn, new Dice(other + count));
    console.log(
      createHash('sha256')
        .update(JSON.stringify(await answers(one)))
        .digest('hex'),
    );
  }
}
console.log('ready');
