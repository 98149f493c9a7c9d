/** The search by boards beside flying every choice of rows there is, on random MELs and plans of three flights. */
import { describe, expect, it } from 'vitest';
import { Dice } from '../../../../tests/support/dice.js';
import { entry, melOf, situationOf } from '../../../../tests/support/small-mel.js';
import { drawCases } from '../../../../tests/cases/verdicts.draw.js';
import type { PlannedFlight, Situation } from '../situation.js';
import { stopsOf } from './at-stop.js';
import type { JudgedPlan } from './best-plan.js';
import { glanceAhead } from './glance-ahead.js';
import { nextFlights } from './judge-next-flights.js';
import { searchByValue } from './search-by-value.js';
import { searchEvery, searchPlans } from './search-plans.js';

function planOf(dice: Dice): PlannedFlight[] {
  return [8, 11, 14].map((hour, at) => ({
    id: `F${at}`,
    from: dice.of(['Northmere', 'Saltby']),
    to: 'Saltby',
    offBlockAt: `2026-03-10T${String(hour).padStart(2, '0')}:00Z`,
    onBlockAt: `2026-03-10T${hour + 2}:00Z`,
    flightMinutes: 100,
    facts: {
      'flight.rvsm': dice.of([false, false, false, true, null]),
      'flight.icing': dice.of(['none', 'none', 'forecast', 'known', null]),
      'flight.etopsMinutes': dice.of([0, 0, 120, 180, null]),
    },
  }));
}

const rowsOf = ({ legs: [first] }: JudgedPlan): string[] =>
  (first?.judged?.groups ?? []).flatMap(({ items }) =>
    items.map(({ answer }) => `${answer.entry}/${answer.unit} ${answer.row}`),
  );

describe('the best plan', () => {
  it('by boards is the one that flying every choice finds', async () => {
    const seen = { byBoards: 0, kept: 0, broken: 0, open: 0, changed: 0 };
    for (let seed = 1; seed <= 50; seed++) {
      const dice = new Dice(seed);
      for (const { mel, situation } of drawCases(seed, 3)) {
        const flights = planOf(dice);
        const start: Situation = { ...situation, flight: null, facts: {} };
        const stations = [{ station: 'Saltby', maintenance: dice.of([true, false, null]) }];
        const stops = stopsOf(mel, start, stations);
        for (const rows of ['recorded', 'any'] as const) {
          const budget = { left: 100_000 };
          if (searchByValue(stops, start, flights, { budget, rows }) !== null) seen.byBoards += 1;
          const one = await searchPlans(stops, start, flights, { budget: { left: 100_000 }, rows });
          const two = await searchEvery(stops, start, flights, { budget: { left: 100_000 }, rows });
          const where = `${rows} rows of seed ${seed}`;
          expect([one.best.p, one.possible, one.whole], where).toEqual([two.best.p, two.possible, two.whole]);
          expect(one.best.order, where).toEqual(two.best.order);
          expect(rowsOf(one.best), where).toEqual(rowsOf(two.best));
          if (one.best.p === flights.length) seen.kept += 1;
          else seen.broken += 1;
          if (one.possible > one.best.p) seen.open += 1;
          if (rows === 'any' && (one.best.order[2] ?? 0) > 0) seen.changed += 1;
        }
      }
    }
    expect(Math.min(...Object.values(seen)), JSON.stringify(seen)).toBeGreaterThan(10);
  });

  it('is found behind one that might keep as many flights, if the unknown turned out well', async () => {
    const up = { fact: 'entry.up', operator: 'greaterThanInclusive' as const, value: 1, params: { entry: 'c' } };
    const low = { fact: 'flight.rvsm', operator: 'equal' as const, value: false };
    const mel = melOf(
      entry('a', [{ consideredInoperative: [{ entry: 'c' }] }, {}]),
      entry('b', [{ provisos: [{ any: [up, low] }] }]),
      entry('c', [{}]),
    );
    const flights = [false, null].map((rvsm, at) => ({
      id: `F${at}`,
      from: 'Saltby',
      to: 'Saltby',
      offBlockAt: `2026-03-10T1${at * 4}:00Z`,
      facts: { 'flight.rvsm': rvsm },
    }));
    const start = situationOf([{ entry: 'a' }, { entry: 'b' }], { flight: null });
    const glance = (rows: 'recorded' | 'any') => glanceAhead(mel, start, flights, { rows });
    expect(await glance('recorded')).toMatchObject({ kept: 1, possible: 2 });
    expect(await glance('any')).toMatchObject({ kept: 2, possible: 2, shownBest: true });
  });

  it.each([
    ['by boards', {}],
    ['by flying every choice', { grants: [] }],
  ])('%s says how far some other choice may come', async (_way, more) => {
    const fact = (name: string, value: string | boolean) => ({ fact: name, operator: 'equal' as const, value });
    const mel = melOf(
      entry('a', [{ consideredInoperative: [{ entry: 'c' }] }]),
      entry('c', [
        { provisos: [{ fact: 'flight.icing', operator: 'in', value: ['none'] }] },
        { provisos: [fact('flight.rvsm', false)] },
      ]),
    );
    const flights = ['none', 'known'].map((icing, at) => ({
      id: `F${at}`,
      from: 'Saltby',
      to: 'Saltby',
      offBlockAt: `2026-03-10T1${at * 4}:00Z`,
      facts: { 'flight.icing': icing },
    }));
    const start = situationOf([{ entry: 'a', ...more }], { flight: null });
    expect(await glanceAhead(mel, start, flights)).toMatchObject({ kept: 1, possible: 2, shownBest: true });
  });

  it('at a glance has the answers of the flights told in full', async () => {
    for (let seed = 1; seed <= 15; seed++) {
      const flights = planOf(new Dice(seed));
      for (const { mel, situation } of drawCases(seed, 3)) {
        const start: Situation = { ...situation, flight: null, facts: {} };
        const glance = await glanceAhead(mel, start, flights);
        const told = await nextFlights(mel, start, flights, { savingBudget: 0 });
        expect([glance.kept, glance.possible, glance.shownBest]).toEqual([told.kept, told.possible, told.shownBest]);
        expect(glance.flights).toEqual(
          told.flights.map(({ flight, verdict: { verdict, lo, hi } }) => ({ flight: flight.id, verdict, lo, hi })),
        );
      }
    }
  });
});
