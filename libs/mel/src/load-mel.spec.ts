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
const steering = { entry: '32-51-01' };

describe('loading a MEL', () => {
  it('loads a valid one and freezes it to the last leaf', () => {
    const loaded = loadMel(validMel(), 'test.yaml');
    if ('errors' in loaded) throw new Error(JSON.stringify(loaded.errors));
    const row = loaded.mel.entry('32-42-01')?.subEntries[0]?.rows[0];
    expect(() => ((row as { category: string }).category = 'D')).toThrow(TypeError);
    expect(Object.isFrozen(row?.provisos?.[0]?.when)).toBe(true);
  });

  it('keeps nothing of the value it was given', () => {
    const given = validMel();
    const loaded = loadMel(given, 'test.yaml');
    given.entries = [];
    expect('mel' in loaded && loaded.mel.entries.length).toBe(2);
  });

  it('takes the number of units where a row does not say how many are installed', () => {
    const loaded = loadMel(spoilt(`${ROW}/numberInstalled`, undefined), 'test.yaml');
    expect('mel' in loaded && loaded.mel.entry('32-42-01')?.subEntries[0]?.rows[0]?.numberInstalled).toBe(4);
  });

  it('lists every error of a file with file, entry, field and reason, and loads nothing', () => {
    const content = validMel();
    const row = content.entries[0]?.subEntries[0]?.rows[0];
    if (row === undefined) throw new Error('no row');
    row.numberRequired = 5;
    row.covers = ['9'];
    content.effectiveOn = '2026-02-30';
    expect(errorsOf(content)).toEqual([
      {
        file: 'test.yaml',
        entry: null,
        field: '/effectiveOn',
        reason: '"2026-02-30" is not a day of the calendar',
      },
      {
        file: 'test.yaml',
        entry: '32-42-01',
        field: `${ROW}/numberRequired`,
        reason: '5 required of 4 installed',
      },
      {
        file: 'test.yaml',
        entry: '32-42-01',
        field: `${ROW}/covers/0`,
        reason: '"9" is no unit of this sub-entry',
      },
    ]);
  });

  it('reports at most 200 errors', () => {
    const entries = Array.from({ length: 300 }, () => ({ ...validMel().entries[1], chapter: 'x' }));
    expect(errorsOf({ ...validMel(), entries })).toHaveLength(200);
  });
});

describe('what the loader refuses', () => {
  const cases: [string, unknown, string, RegExp][] = [
    ['another format', spoilt('/format', 'proviso-mel/2'), '/format', /must be "proviso-mel\/1"/],
    ['an unknown key', spoilt('/entries/0/colour', 'red'), '/entries/0', /"colour" is not known/],
    ['an entry without title', spoilt('/entries/0/title', undefined), '/entries/0', /"title" is missing/],
    ['two entries of one number', spoilt('/entries/1/number', '32-42-01'), '/entries/1/number', /second time/],
    ['one unit twice', spoilt('/entries/1/subEntries/0/units', ['L', 'L']), '/entries/1/subEntries/0/units', /dupl/],
    ['a number installed that differs', spoilt(`${ROW}/numberInstalled`, 3), `${ROW}/numberInstalled`, /4 units/],
    ['category A without interval', spoilt(`${ROW}/category`, 'A'), `${ROW}/interval`, /none is given/],
    ['a longer interval than the letter', spoilt(`${ROW}/interval`, '11 calendar-days'), `${ROW}/interval`, /longer/],
    ['category C in flights', spoilt(`${ROW}/interval`, '2 flights'), `${ROW}/interval`, /calendar days only/],
    [
      'an unreadable repeat',
      spoilt(`${ROW}/procedures/0/repeat/every`, 'now and then'),
      `${ROW}/procedures/0/repeat/every`,
      /cannot be read/,
    ],
    [
      'a reference to no entry',
      spoilt(`${ROW}/consideredInoperative/0/entry`, '99-99'),
      `${ROW}/consideredInoperative/0/entry`,
      /no entry "99-99"/,
    ],
    [
      'a reference to no unit',
      spoilt(`${ROW}/consideredInoperative/0/units`, ['Q']),
      `${ROW}/consideredInoperative/0/units/0`,
      /no unit "Q"/,
    ],
    [
      'needing a unit down that is none',
      spoilt(`${ROW}/needsDown`, [{ entry: '1' }]),
      `${ROW}/needsDown/0/entry`,
      /no entry/,
    ],
    [
      'losing what is none',
      spoilt(`${ROW}/notes/0/lost`, [{ entry: '1' }]),
      `${ROW}/notes/0/lost/0/entry`,
      /no entry/,
    ],
    ['an id of two conditions', spoilt(`${ROW}/procedures/1/id`, 'a'), `${ROW}/procedures/1/id`, /second time/],
    [
      'a procedure called placard',
      spoilt(`${ROW}/procedures/1/id`, 'placard'),
      `${ROW}/procedures/1/id`,
      /meaning of its own/,
    ],
    [
      'a unit called constructor',
      spoilt('/entries/1/subEntries/0/units', ['constructor']),
      '/entries/1/subEntries/0/units/0',
      /may not be used/,
    ],
    ['an unknown fact', spoilt(WHEN, leaf('flight.luck', 'equal', true)), `${WHEN}/fact`, /no fact "flight.luck"/],
    ['a foreign operator', spoilt(WHEN, leaf('flight.rvsm', 'contains', true)), `${WHEN}/operator`, /must be one of/],
    [
      'an operator that does not fit',
      spoilt(WHEN, leaf('flight.icing', 'lessThan', 'none')),
      `${WHEN}/operator`,
      /does not fit/,
    ],
    [
      'a number as text',
      spoilt(WHEN, leaf('flight.level', 'lessThan', '310')),
      `${WHEN}/value`,
      /"310" is not a number/,
    ],
    [
      'a choice that is none',
      spoilt(WHEN, leaf('flight.icing', 'equal', 'severe')),
      `${WHEN}/value`,
      /none of none, forecast, known/,
    ],
    [
      'a list where one value stands',
      spoilt(WHEN, leaf('flight.icing', 'equal', ['none'])),
      `${WHEN}/value`,
      /takes one value/,
    ],
    [
      'a fact without its subject',
      spoilt(WHEN, leaf('flight.minimaNeed', 'equal', false)),
      `${WHEN}/params`,
      /needs params.entry/,
    ],
    [
      'a subject without need',
      spoilt(WHEN, leaf('flight.rvsm', 'equal', false, steering)),
      `${WHEN}/params/entry`,
      /not about one entry/,
    ],
    ['a path', spoilt(WHEN, { ...leaf('flight.rvsm', 'equal', false), path: '$.x' }), WHEN, /"path" is not known/],
    [
      'a priority',
      spoilt(WHEN, { all: [leaf('flight.rvsm', 'equal', false)], priority: 2 }),
      WHEN,
      /"priority" is not known/,
    ],
    ['an event', spoilt(`${ROW}/provisos/0/event`, { type: 'x' }), `${ROW}/provisos/0`, /"event" is not known/],
    ['an empty all', spoilt(WHEN, { all: [] }), `${WHEN}/all`, /fewer than 1/],
    ['an empty any', spoilt(WHEN, { any: [] }), `${WHEN}/any`, /fewer than 1/],
    [
      'both all and any',
      spoilt(WHEN, { all: [leaf('flight.rvsm', 'equal', false)], any: [leaf('flight.rvsm', 'equal', false)] }),
      WHEN,
      /"any" is not known/,
    ],
    ['a control character', spoilt('/entries/0/title', 'a\u0000b'), '/entries/0/title', /U\+0000/],
    ['a directional override', spoilt('/entries/0/title', 'a\u202eb'), '/entries/0/title', /U\+202E/],
    ['half a surrogate pair', spoilt('/entries/0/title', 'a\ud800'), '/entries/0/title', /U\+D800/],
    [
      'work that no row has',
      spoilt(WHEN, leaf('work.done', 'equal', true, { work: '32-42-01/1/M9' })),
      `${WHEN}/params/work`,
      /no row has the work/,
    ],
    [
      'a judgement nobody asks for',
      spoilt(WHEN, leaf('judgement.accepted', 'equal', true, { judgement: '32-42-01/1/J9' })),
      `${WHEN}/params/judgement`,
      /no row asks/,
    ],
  ];

  it.each(cases)('refuses %s', (_, value, field, reason) => {
    const errors = errorsOf(value);
    expect(errors.map((error) => error.field)).toContain(field);
    expect(errors.find((error) => error.field === field)?.reason).toMatch(reason);
  });

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

  it('refuses two sub-entries that may be written for the same aircraft', () => {
    const subEntry = validMel().entries[1]?.subEntries[0];
    const both = (left: object | undefined, right: object | undefined) =>
      errorsOf(
        spoilt('/entries/1/subEntries', [
          { ...subEntry, id: 'x', ...left },
          { ...subEntry, id: 'y', ...right },
        ]),
      );
    expect(both({}, {})).toHaveLength(1);
    expect(both({ appliesTo: { configurations: ['P'] } }, {})).toHaveLength(1);
    expect(
      both({ appliesTo: { serials: [{ from: 1, to: 9 }] } }, { appliesTo: { serials: [{ from: 9, to: 12 }] } }),
    ).toHaveLength(1);
    expect(
      both({ appliesTo: { serials: [{ from: 1, to: 9 }] } }, { appliesTo: { serials: [{ from: 10, to: 12 }] } }),
    ).toEqual([]);
    expect(both({ appliesTo: { configurations: ['P'] } }, { appliesTo: { configurations: ['Q'] } })).toEqual([]);
  });
});

describe('intervals of category A', () => {
  const row = (more: object) => {
    const content = validMel() as unknown as { entries: { subEntries: { rows: object[] }[] }[] };
    const rows = content.entries[0]?.subEntries[0]?.rows ?? [];
    rows[0] = { ...rows[0], category: 'A', ...more };
    return errorsOf(content);
  };

  it('may differ by unit when every relieved unit has one', () => {
    const byUnit = { '1': '2 flight-days', '2': '3 flight-days' };
    expect(row({ covers: ['1', '2'], intervalByUnit: byUnit })).toEqual([]);
    expect(row({ intervalByUnit: byUnit }).map(({ reason }) => reason)).toEqual([
      'unit "3" has no interval',
      'unit "4" has no interval',
    ]);
    expect(row({ interval: '5 flights', intervalByUnit: { '7': '2 flights' } })[0]?.reason).toMatch(
      /no unit that this row/,
    );
  });

  it('belong to category A alone', () => {
    expect(row({ category: 'C', intervalByUnit: { '1': '2 flights' } })[0]?.reason).toMatch(/only category A/);
  });
});

describe('hostile content', () => {
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
