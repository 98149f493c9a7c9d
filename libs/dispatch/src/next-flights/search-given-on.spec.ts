/**
 * The flights ahead where a person's answer was given on certain items, rows and routes: what is found by values is what
 * flying every choice finds, on drawn MELs and plans of three flights. An answer may hold under one choice of rows and be
 * asked again under another, for the combination and for a row's own condition alike; and an answer of no, asked again,
 * lets an earlier yes count.
 */
import { expect, it } from 'vitest';
import { Dice } from '../../../../tests/support/dice.js';
import { STATIONS, withGivenOn } from '../../../../tests/cases/given-on.draw.js';
import { drawCases } from '../../../../tests/cases/verdicts.draw.js';
import type { PlannedFlight, RecordedJudgement } from '../situation.js';
import { stopsOf } from './at-stop.js';
import { searchByValue } from './search-by-value.js';
import { searchInFull, searchPlans, type FoundPlan } from './search-plans.js';

/** Seeds 1 to 300 agree; among these an answer often bounds a search wrongly that takes it as it stands under no row. */
const [FIRST, LAST] = [181, 230];

function drawPlan(dice: Dice): PlannedFlight[] {
  return [8, 11, 14].map((hour, at) => ({
    id: `F${at}`,
    from: dice.of(STATIONS),
    to: 'Saltby',
    offBlockAt: `2026-03-10T${String(hour).padStart(2, '0')}:00Z`,
    onBlockAt: `2026-03-10T${hour + 2}:00Z`,
    facts: {
      'flight.rvsm': dice.of([false, false, false, false, true, null]),
      'flight.icing': dice.of(['none', 'none', 'none', 'forecast', 'known', null]),
      'flight.etopsMinutes': dice.of([0, 0, 0, 120, null]),
    },
  }));
}

function told({ best, possible, whole }: FoundPlan) {
  const items = best.legs[0]?.judged?.groups.flatMap((group) => group.items) ?? [];
  return {
    kept: best.p,
    possible,
    whole,
    order: best.order,
    flights: best.legs.map(({ lo, hi }) => `${lo} to ${hi}`),
    rows: items.map(({ answer: { entry, unit, row } }) => `${entry}/${unit} ${row}`),
  };
}

const anyItem = ({ givenOn: _, ...one }: RecordedJudgement): RecordedJudgement => one;

it('flights ahead are found by values as in full where answers were given on certain items', async () => {
  const seen = { byValue: 0, kept: 0, broken: 0, open: 0, changed: 0, turnsOnItems: 0 };
  for (let seed = FIRST; seed <= LAST; seed++) {
    const dice = new Dice(seed + 5_000);
    for (const { mel, situation } of drawCases(seed, 4)) {
      const flights = drawPlan(dice);
      const start = { ...withGivenOn(dice, mel, situation), flight: null, facts: {} };
      const stops = stopsOf(mel, start, [{ station: 'Saltby', maintenance: dice.of([true, true, false, null]) }]);
      for (const rows of ['recorded', 'any'] as const) {
        const searching = () => ({ budget: { left: 100_000 }, rows });
        const values = searchByValue(stops, start, flights, searching());
        const one = told(await searchPlans(stops, start, flights, searching()));
        const two = told(await searchInFull(stops, start, flights, searching()));
        expect(one, `${rows} rows of seed ${seed}`).toEqual(two);
        if (values === null) continue;
        seen.byValue += 1;
        seen[one.kept === flights.length ? 'kept' : 'broken'] += 1;
        if (one.possible > one.kept) seen.open += 1;
        if (rows === 'any' && (one.order[2] ?? 0) > 0) seen.changed += 1;
        const always = { ...start, judgements: start.judgements.map(anyItem) };
        const other = searchByValue(stops, always, flights, searching());
        if (other?.best.p !== values.best.p || other.possible !== values.possible) seen.turnsOnItems += 1;
      }
    }
  }
  expect(Math.min(...Object.values(seen)), JSON.stringify(seen)).toBeGreaterThan(10);
});
