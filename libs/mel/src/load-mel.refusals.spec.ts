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

const categoryA = (interval: string): unknown => {
  const [row] = validMel().entries[0]?.subEntries[0]?.rows ?? [];
  return spoilt(ROW, { ...row, category: 'A', interval });
};

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
      'the later of two limits without the words that say so',
      categoryA('2 flights or 9 hours, whichever is later'),
      `${ROW}/interval`,
      /without lastOf/,
    ],
    [
      'words for the later of two limits that no interval asks for',
      spoilt(`${ROW}/lastOf`, { says: 'whichever occurs later', source: { document: 'an MMEL' } }),
      `${ROW}/lastOf`,
      /no interval of this row/,
    ],
    [
      'a shorter limit that waits for no procedure of the row',
      categoryA('3 flight-days, X9 within 1 flight-day'),
      `${ROW}/interval`,
      /"X9" is no procedure of this row/,
    ],
    [
      'an unreadable repeat',
      spoilt(`${ROW}/procedures/0/repeat/every`, 'now and then'),
      `${ROW}/procedures/0/repeat/every`,
      /cannot be read/,
    ],
    [
      'a repeat by station',
      spoilt(`${ROW}/procedures/0/repeat/every`, 'first opportunity at a base'),
      `${ROW}/procedures/0/repeat/every`,
      /happens once/,
    ],
    ['a JASC code that is none', spoilt('/entries/0/jasc', '3299'), '/entries/0/jasc', /no code of the JASC table/],
    [
      'a JASC code of another chapter',
      spoilt('/entries/0/jasc', '3340'),
      '/entries/0/jasc',
      /not belong to chapter 32/,
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
});
