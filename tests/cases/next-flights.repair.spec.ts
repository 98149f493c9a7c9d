/**
 * What a repair does to a plan of three flights (rules 8 and 10): closing a defect, with work, judgement and signed rows of
 * the rest held, lowers neither p nor q. For a MEL without `needsDown`; the witnesses of what is false stand with the
 * properties of one flight.
 */
import { expect, it } from 'vitest';
import { glanceAhead, type PlannedFlight } from '#dispatch';
import { Dice } from '../support/dice.js';
import { needsItsPartner, takenAlong, without, withWorkNamed } from './closed-defect.js';
import { drawCases } from './verdicts.draw.js';

const planOf = (dice: Dice): PlannedFlight[] =>
  ['08', '11', '14'].map((hour, index) => ({
    id: `F${index}`,
    from: 'Northmere',
    to: 'Northmere',
    offBlockAt: `2026-03-10T${hour}:00Z`,
    onBlockAt: `2026-03-10T${Number(hour) + 2}:00Z`,
    flightMinutes: 100,
    facts: {
      'flight.rvsm': { value: dice.of([false, false, null, true]) },
      'flight.icing': { value: dice.of(['none', 'none', null, 'known']) },
      'flight.etopsMinutes': { value: dice.of([0, 0, 120, null]) },
    },
  }));

it.each(['recorded', 'any'] as const)('never keeps fewer flights than before, with %s rows', async (rows) => {
  const seen = { closed: 0, keptMore: 0, perhapsMore: 0, takenAlong: 0 };
  for (let seed = 0; seed < 150; seed += 1) {
    const flights = planOf(new Dice(seed));
    for (const { mel, situation: drawn } of drawCases(seed, 5)) {
      if (needsItsPartner(mel)) continue;
      const situation = { ...withWorkNamed(drawn), facts: {} };
      const taken = takenAlong(mel);
      const before = await glanceAhead(mel, situation, flights, { rows });
      for (const { id, entry, units } of situation.defects) {
        const after = await glanceAhead(mel, without(situation, id), flights, { rows });
        const isTakenAlong = taken.has(entry ?? '');
        expect(before.shownBest && after.shownBest, `seed ${seed}`).toBe(true);
        expect(after.kept, `seed ${seed}, ${id}`).toBeGreaterThanOrEqual(before.kept);
        if (units.length === 1 || !isTakenAlong) {
          expect(after.possible, `seed ${seed}, ${id}`).toBeGreaterThanOrEqual(before.possible);
        }
        seen.closed += 1;
        if (after.kept > before.kept) seen.keptMore += 1;
        if (after.possible > before.possible) seen.perhapsMore += 1;
        if (isTakenAlong) seen.takenAlong += 1;
      }
    }
  }
  expect(Math.min(...Object.values(seen)), JSON.stringify(seen)).toBeGreaterThan(50);
});
