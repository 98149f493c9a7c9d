import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadMel } from './load-mel.js';
import { spoilt, validMel } from './valid-mel.fixture.js';

const ROW = '/entries/0/subEntries/0/rows/0';
const WHEN = `${ROW}/provisos/0/when`;

const errorsOf = (value: unknown) => {
  const loaded = loadMel(value, 'test.yaml');
  return 'errors' in loaded ? loaded.errors : [];
};

const leaf = (fact: string, operator: string, value: unknown, params?: object) => ({
  fact,
  operator,
  value,
  ...(params === undefined ? {} : { params }),
});

describe('hostile content', () => {
  it('refuses keys that reach for a prototype, wherever they stand', () => {
    for (const key of ['__proto__', 'constructor', 'prototype']) {
      const poisoned = JSON.parse(
        JSON.stringify(validMel()).replace('"title"', `"${key}":{"polluted":true},"title"`),
      ) as unknown;
      expect(errorsOf(poisoned)[0]?.reason).toBe(`the key "${key}" is not allowed`);
    }
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });

  it('allows a condition 20 deep and refuses one of 21', () => {
    const deep = (depth: number): unknown =>
      depth === 1 ? leaf('flight.rvsm', 'equal', false) : { not: deep(depth - 1) };
    expect(errorsOf(spoilt(WHEN, deep(20)))).toEqual([]);
    expect(errorsOf(spoilt(WHEN, deep(21)))[0]?.reason).toMatch(/21 deep/);
    expect(errorsOf(spoilt(WHEN, deep(3000)))[0]?.reason).toMatch(/nested more than/);
  });

  it('refuses a cycle, a getter, a map and a value that throws when looked at', () => {
    const cycle: Record<string, unknown> = {};
    cycle['again'] = cycle;
    const throwing = new Proxy(
      {},
      {
        ownKeys: () => {
          throw new Error('boo');
        },
      },
    );
    for (const value of [
      cycle,
      {
        get format() {
          return 'x';
        },
      },
      new Map(),
      throwing,
      [throwing],
      () => 1,
      Symbol('x'),
    ]) {
      expect(errorsOf(value)).toHaveLength(1);
    }
  });

  it('never makes the loader throw', () => {
    fc.assert(
      fc.property(
        fc.anything({
          withBigInt: true,
          withDate: true,
          withMap: true,
          withSet: true,
          withNullPrototype: true,
          withObjectString: true,
          withSparseArray: true,
          withTypedArray: true,
        }),
        (value) => {
          expect(errorsOf(value).length).toBeGreaterThan(0);
        },
      ),
      { numRuns: 1000 },
    );
  });

  const places = [
    '/format',
    '/entries',
    '/entries/0',
    '/entries/0/subEntries',
    '/entries/0/subEntries/0/units',
    ROW,
    `${ROW}/provisos`,
    WHEN,
    `${WHEN}/all`,
    `${WHEN}/all/0`,
    `${WHEN}/all/0/value`,
    `${WHEN}/all/0/params`,
    `${ROW}/procedures/0/repeat`,
    `${ROW}/interval`,
    `${ROW}/intervalByUnit`,
    `${ROW}/covers`,
    `${ROW}/notes`,
    `${ROW}/numberRequired`,
    `${ROW}/needsDown`,
  ];

  it('never makes the loader throw when one place of a valid MEL is replaced by anything', () => {
    fc.assert(
      fc.property(fc.constantFrom(...places), fc.anything(), (place, value) => {
        const loaded = loadMel(spoilt(place, value), 'test.yaml');
        expect('mel' in loaded || loaded.errors.length > 0).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
});
