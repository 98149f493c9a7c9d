import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { loadMel, type Mel } from '#mel';
import type { Situation } from '../situation.js';
import { readCase } from './read-case.js';
import { CASE_SCHEMA } from './schema.js';

const row = { id: '1', category: 'C', numberRequired: 1, remarks: 'one may be inoperative' };
const loaded = loadMel(
  {
    format: 'proviso-mel/1',
    document: 'Invented MEL',
    operator: 'nobody',
    aircraftType: 'X',
    revision: '1',
    effectiveOn: '2026-01-01',
    entries: [
      {
        number: '21-01',
        title: 'Pack',
        chapter: '21',
        subEntries: [
          {
            id: 'all',
            units: ['1', '2'],
            rows: [
              {
                ...row,
                procedures: [{ id: 'M1', kind: 'M', text: 'do it' }],
                judgements: [{ id: 'J1', question: 'is it good?', by: 'commander' }],
              },
            ],
          },
        ],
      },
      { number: '49-01', title: 'APU', chapter: '49', subEntries: [{ id: 'all', units: ['1'], rows: [row] }] },
    ],
  },
  'mel',
);
if ('errors' in loaded) throw new Error(JSON.stringify(loaded.errors));
const mel: Mel = loaded.mel;

const good = {
  at: '2026-03-10T06:00Z',
  aircraft: { registration: 'Q-ABC', type: 'X' },
  defects: [{ entry: '21-01', unit: '2', row: '1', recordedAt: '2026-03-09T12:00' }],
  flight: {
    id: 'F1',
    from: 'Northmere',
    to: 'Saltby',
    offBlockAt: '2026-03-10T08:00Z',
    facts: { 'flight.level': 300 },
  },
  facts: { 'flight.rvsm': { value: false, source: 'flight plan' }, 'flight.icing': null },
  work: ['21-01/1/M1'],
};

/** As a file gives it: a key set to undefined is not there. */
const parsed = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

const read = (value: unknown): Situation => {
  const result = readCase(parsed(value), 'case.yaml', mel, '2026a');
  if ('errors' in result) throw new Error(JSON.stringify(result.errors));
  return result.situation;
};
const errorsOf = (change: object) => {
  const result = readCase(parsed({ ...good, ...change }), 'case.yaml', mel, '2026a');
  return 'errors' in result ? result.errors : [];
};
const defect = (change: object) => ({ defects: [{ ...good.defects[0], ...change }] });

describe('a case file', () => {
  it('becomes a situation, its short forms written out and its defaults filled in', () => {
    expect(read(good)).toEqual({
      at: '2026-03-10T06:00Z',
      tzdb: '2026a',
      aircraft: { registration: 'Q-ABC', type: 'X', configuration: null, serial: null },
      defects: [
        { id: 'defect 1', entry: '21-01', units: ['2'], row: '1', signed: true, recordedAt: '2026-03-09T12:00' },
      ],
      flight: { ...good.flight, facts: { 'flight.level': { value: 300 } } },
      facts: { 'flight.rvsm': { value: false, source: 'flight plan' }, 'flight.icing': { value: null } },
      work: [{ work: '21-01/1/M1', doneAt: '2026-03-10T06:00Z', forFlight: 'F1' }],
      judgements: [],
      directives: [],
      gates: { unanswered: [], openWork: [], orphans: [] },
      settings: {
        base: 'UTC',
        expiryInFlight: 'departure-inside',
        combinationNeedsAcceptance: false,
        budget: 100_000,
      },
    });
  });

  it.each([
    ['/defects/0/deadline/lastDay', { deadline: { lastDay: '2026-13-45' } }, '2026-13-45'],
    ['/defects/0/deadline/lastDay', { deadline: { lastDay: '2026-02-30' } }, '2026-02-30'],
    ['/defects/0/used/lastFlightDayOn', { used: { flightDays: 1, lastFlightDayOn: '2026-00-10' } }, '2026-00-10'],
  ])('names %s where it is no day of the calendar', (pointer, change, day) => {
    expect(errorsOf(defect(change))).toEqual([
      { file: 'case.yaml', pointer, reason: `"${day}" is no day of the calendar` },
    ]);
  });

  it('takes the last day of February where there is one', () => {
    const change = defect({ deadline: { lastDay: '2028-02-29' } });
    expect(errorsOf(change)).toEqual([]);
  });

  it('needs no unit named where only one is installed', () => {
    expect(read({ ...good, work: [], ...defect({ entry: '49-01', unit: undefined }) }).defects[0]!.units).toEqual([
      '1',
    ]);
  });

  it('reads the conditions of another basis as the MEL loader does', () => {
    const basis = (conditions: unknown[]) =>
      defect({
        entry: null,
        unit: undefined,
        row: undefined,
        basis: { kind: 'permit', reference: 'P 1', limit: 'no passengers', conditions },
      });
    const when = { fact: 'flight.kind', operator: 'equal', value: 'ferry' };
    expect(errorsOf(basis([{ id: 'a', text: 'a ferry flight', when }]))).toEqual([]);
    expect(errorsOf(basis([{ id: 'a', text: 'a ferry flight', when: { ...when, path: '$.x' } }]))).toEqual([
      {
        file: 'case.yaml',
        pointer: '/defects/0/basis/conditions/0/when',
        reason: 'the key "path" is not known here',
      },
    ]);
    expect(errorsOf(basis([{ id: 'a', text: 'nothing', when: { any: [] } }]))[0]).toMatchObject({
      pointer: '/defects/0/basis/conditions/0/when/any',
    });
  });

  it.each([
    ['an unknown key', { colour: 'red' }, '', 'the key "colour" is not known here'],
    ['no instant', { at: undefined }, '', 'the key "at" is missing'],
    ['an instant without offset', { at: '2026-03-10T06:00' }, '/at', 'neither Z nor an offset'],
    ['a base that is none', { settings: { base: '+01:00' } }, '/settings/base', '"+01:00"'],
    [
      'a fact that does not exist',
      { facts: { 'flight.moon': true } },
      '/facts/flight.moon',
      'there is no fact "flight.moon"',
    ],
    [
      'a fact about an entry that does not exist',
      { facts: { 'flight.minimaNeed[99-99]': true } },
      '/facts/flight.minimaNeed[99-99]',
      'no entry "99-99"',
    ],
    [
      'a fact that follows from the rest',
      { facts: { 'entry.up[21-01]': 2 } },
      '/facts/entry.up[21-01]',
      'follows from the rest',
    ],
    [
      'a value of another type',
      { facts: { 'flight.rvsm': 'no' } },
      '/facts/flight.rvsm',
      '"no" is not true or false',
    ],
    ['a choice that is none', { facts: { 'flight.icing': 'some' } }, '/facts/flight.icing', 'none, forecast, known'],
    [
      'an age that cannot be read',
      { facts: { 'flight.rvsm': { value: true, validUntil: 'noon on Tuesday' } } },
      '/facts/flight.rvsm/validUntil',
      'noon on Tuesday',
    ],
    ['an entry that does not exist', defect({ entry: '99-99' }), '/defects/0/entry', 'it has 21-01, 49-01'],
    ['a unit that does not exist', defect({ unit: '3' }), '/defects/0/units', 'has no unit "3"; it has 1, 2'],
    ['no unit where there are two', defect({ unit: undefined }), '/defects/0', 'which unit is it? 21-01 has 1, 2'],
    ['unit and units', defect({ units: ['1'] }), '/defects/0', 'either "unit" or "units"'],
    ['a row that does not exist', defect({ row: '7' }), '/defects/0/row', 'has no row "7"; it has 1'],
    [
      'a row and another basis',
      defect({ basis: { kind: 'cdl', reference: 'C', limit: 'l' } }),
      '/defects/0',
      'either on a row or on another basis',
    ],
    ['a row without an entry', defect({ entry: null }), '/defects/0/row', 'a row needs an entry'],
    [
      'a record still to come',
      defect({ recordedAt: '2026-03-10T06:01' }),
      '/defects/0/recordedAt',
      'later than the instant of the case',
    ],
    ['a record on no day', defect({ recordedAt: '2026-02-30T06:01' }), '/defects/0/recordedAt', '2026-02-30'],
    [
      'two defects of one name',
      {
        defects: [
          { ...good.defects[0], id: 'D' },
          { ...good.defects[0], id: 'D', unit: '1' },
        ],
      },
      '/defects',
      'called "D"',
    ],
    ['work that no row owes', { work: ['21-01/1/M9'] }, '/work/0', 'its row owes 21-01/1/M1'],
    [
      'a judgement that no row asks for',
      { judgements: [{ judgement: '21-01/1/J2', accepted: true, by: 'A', role: 'commander' }] },
      '/judgements/0',
      'its row asks for 21-01/1/J1',
    ],
    [
      'a directive about no entry',
      { directives: [{ number: 'AD 1', entry: '99-99' }] },
      '/directives/0/entry',
      'no entry "99-99"',
    ],
  ])('is refused for %s, saying where and why', (_, change, pointer, reason) => {
    const errors = errorsOf(change);
    expect(errors.map((error) => error.file)).toEqual(errors.map(() => 'case.yaml'));
    expect(errors).toEqual(
      expect.arrayContaining([
        expect.objectContaining({ pointer, reason: expect.stringContaining(reason) as string }),
      ]),
    );
  });

  it.each([null, 7, 'text', [], { __proto__: null }, JSON.parse('{"__proto__":{"a":1}}'), new Map()])(
    'is refused when it is %s at all',
    (value: unknown) => {
      expect(readCase(value, 'case.yaml', mel, '2026a')).toHaveProperty('errors');
    },
  );

  it('has a published schema that accepts what is read', () => {
    const validate = new Ajv2020({ strict: true, strictRequired: false }).compile(CASE_SCHEMA);
    expect(validate(good)).toBe(true);
    expect(validate({ ...good, colour: 'red' })).toBe(false);
  });
});
