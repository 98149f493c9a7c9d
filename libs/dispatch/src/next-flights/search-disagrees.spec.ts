/** The search by values lies about the second flight. */
import { expect, it, vi } from 'vitest';
import { entry, melOf, situationOf } from '../../../../tests/support/small-mel.js';
import { EvaluatorsDisagree } from '../evaluators-disagree.js';
import type * as ByValue from './search-by-value.js';
import { nextFlights } from './judge-next-flights.js';

vi.mock('./search-by-value.js', async (original) => {
  const { searchByValue } = await original<typeof ByValue>();
  const lying: typeof searchByValue = (...given) => {
    const found = searchByValue(...given)!;
    const values = found.best.values.map((one, at) => (at === 1 ? { ...one, value: 0 } : one));
    return { ...found, best: { ...found.best, values } };
  };
  return { searchByValue: lying };
});

it('where a plan by values and the same plan flown with reasons differ there is no answer, and both are told', async () => {
  const mel = melOf(entry('a', [{ provisos: [{ fact: 'flight.rvsm', operator: 'equal', value: false }] }]));
  const flights = [8, 12].map((hour, at) => ({
    id: `F${at}`,
    from: 'Saltby',
    to: 'Saltby',
    offBlockAt: `2026-03-10T${String(hour).padStart(2, '0')}:00Z`,
    facts: { 'flight.rvsm': false },
  }));
  const start = situationOf([{ entry: 'a' }], { flight: null });
  const thrown: unknown = await nextFlights(mel, start, flights).catch((error: unknown) => error);
  expect(thrown).toBeInstanceOf(EvaluatorsDisagree);
  expect(thrown).toMatchObject({
    aircraft: start.aircraft.registration,
    flight: 'F1',
    ways: [
      { lo: 'may-not-fly', hi: 'may-not-fly', conditions: null },
      { lo: 'may-fly', hi: 'may-fly', conditions: expect.arrayContaining([expect.objectContaining({ now: 'T' })]) },
    ],
  });
  expect(String(thrown)).toContain('on F1 the search by values says "may-not-fly"');
});
