import { describe, expect, it } from 'vitest';
import { entry, melOf, situationOf } from '../../../../tests/support/small-mel.js';
import { judge } from '../judge.js';

const mel = melOf(
  entry('30-01', [
    {
      provisos: [
        { fact: 'flight.icing', operator: 'equal', value: 'none' },
        { fact: 'flight.rvsm', operator: 'equal', value: false },
        { fact: 'entry.up', operator: 'greaterThanInclusive', value: 1, params: { entry: '30-02' } },
        { fact: 'flight.visibleMoisture', operator: 'equal', value: false },
        { not: { fact: 'aircraft.serial', operator: 'equal', value: 7 } },
      ],
    },
  ]),
  entry('30-02', [{}]),
);

describe('a fact in an answer', () => {
  it('says where it comes from, how old it is, and how long it holds', async () => {
    const facts = {
      'flight.icing': { value: 'none', source: 'forecast 17', observedAt: '2026-03-10T04:30:30Z' },
      'flight.rvsm': { value: false },
    };
    const { items } = await judge(mel, situationOf([{ entry: '30-01' }], { facts }));
    const trees = items[0]!.conditions.filter(({ kind }) => kind === 'proviso').map(({ tree }) => tree);
    expect(trees).toMatchObject([
      { actual: 'none', source: 'forecast 17', ageMinutes: 89, validUntil: '2026-03-10T10:30:30Z' },
      { actual: false, source: 'given with the flight, without a source', validFor: 'this flight' },
      { actual: 1, source: 'what is open on the aircraft', validFor: 'until something is changed' },
      { actual: null, known: false, because: 'nobody has said' },
      { children: [{ actual: 1, source: 'what is kept of the aircraft', validFor: 'until something is changed' }] },
    ]);
    expect(trees[0]).not.toHaveProperty('validFor');
    expect(trees[1]).not.toHaveProperty('ageMinutes');
    expect(trees[3]).not.toHaveProperty('source');
  });

  it('is as old as the instant asked for makes it, though the tree was made before', async () => {
    const facts = { 'flight.icing': { value: 'none', source: 'forecast 17', observedAt: '2026-03-10T04:30Z' } };
    const age = async (at: string) => {
      const { items } = await judge(mel, situationOf([{ entry: '30-01' }], { facts, at }));
      return items[0]!.conditions.find(({ kind }) => kind === 'proviso')?.tree?.ageMinutes;
    };
    expect([await age('2026-03-10T05:00Z'), await age('2026-03-10T06:00Z')]).toEqual([30, 90]);
  });
});
