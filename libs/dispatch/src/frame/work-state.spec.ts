import { describe, expect, it } from 'vitest';
import type { Procedure, Repeat } from '#mel';
import { entry, melOf, situationOf } from '../../../../tests/support/small-mel.js';
import type { Situation, WorkState } from '../situation.js';
import { Frame } from './frame.js';
import { workAnswer } from './work-state.js';

const mel = melOf(entry('32-01', [{ procedures: [{ id: 'M1', kind: 'M', text: 'Do it.' }] }], ['1', '2']));
const WORK = '32-01/1/M1';
const procedure = (repeat?: Repeat, more: Partial<Procedure> = {}): Procedure => ({
  id: 'M1',
  kind: 'M',
  text: 'Do it.',
  ...(repeat === undefined ? {} : { repeat }),
  ...more,
});

function ask(
  repeat: Repeat | undefined,
  records: Partial<WorkState>[],
  change: Partial<Situation> = {},
  more: Partial<Procedure> = {},
) {
  const work = records.map((record) => ({ work: WORK, ...record }));
  const situation = situationOf([{ entry: '32-01', used: { flights: 3 } }], { work, ...change });
  const { now, after, because } = workAnswer(
    new Frame(mel, situation),
    WORK,
    procedure(repeat, more),
    situation.defects[0]!,
  );
  return [`${now}${after}`, because] as const;
}

const morning = '2026-03-10T05:30Z';
const evening = '2026-03-09T20:00Z';

describe('a piece of work', () => {
  it.each<[string, Repeat | undefined, Partial<WorkState>[], string, string]>([
    ['owed once and done', 'once', [{ doneAt: evening }], 'TT', 'done and signed'],
    ['owed once by default', undefined, [{ doneAt: evening }], 'TT', 'done and signed'],
    ['not done', 'once', [], 'FT', 'not done and signed'],
    ['signed for a time to come', 'once', [{ doneAt: '2026-03-10T06:01Z' }], 'FT', 'still to come'],
    [
      'good until before departure',
      'once',
      [{ doneAt: evening, validUntil: '2026-03-10T07:00Z' }],
      'FT',
      'before departure',
    ],
    ['impossible', 'once', [{ possible: false, because: 'no tools' }], 'FF', 'no tools'],
    ['perhaps possible', 'once', [{ possible: null }], 'FU', 'is not known'],
    [
      'done though a second doing is impossible',
      'once',
      [{ doneAt: evening }, { possible: false }],
      'TT',
      'done and signed',
    ],
    [
      'owed each departure, done for this one',
      'each-departure',
      [{ doneAt: morning, forFlight: 'F1' }],
      'TT',
      'for this flight',
    ],
    [
      'owed each departure, done for another',
      'each-departure',
      [{ doneAt: morning, forFlight: 'F0' }],
      'FT',
      'for another flight',
    ],
    ['owed each departure, done for none', 'each-departure', [{ doneAt: morning }], 'FT', 'no named flight'],
    ['owed each flight-day, done today', 'each-flight-day', [{ doneAt: morning }], 'TT', 'on this flight-day'],
    [
      'owed each flight-day, done yesterday',
      'each-flight-day',
      [{ doneAt: evening }],
      'FT',
      'last done on 2026-03-09',
    ],
    [
      'owed every 12 hours, 12 h before departure',
      { every: '12 hours' },
      [{ doneAt: evening }],
      'FT',
      'every 12 hours',
    ],
    [
      'owed every 13 hours, 12 h before departure',
      { every: '13 hours' },
      [{ doneAt: evening }],
      'TT',
      'every 13 hours',
    ],
    [
      'owed every 5 flights, four since',
      { every: '5 flights' },
      [{ doneAt: evening, usedSince: { flights: 4 } }],
      'TT',
      'limit is 5',
    ],
    [
      'owed every 5 flights, five since',
      { every: '5 flights' },
      [{ doneAt: evening, usedSince: { flights: 5 } }],
      'FT',
      '5 of 5',
    ],
    ['owed every 5 flights, uncounted', { every: '5 flights' }, [{ doneAt: evening }], 'UT', 'not known'],
    [
      'owed after the first flight, inspected',
      { afterFirstFlightThenEvery: '5 flights' },
      [{ doneAt: evening, usedSince: { flights: 1 } }],
      'TT',
      'limit is 5',
    ],
    ['owed after the first flight, not inspected', { afterFirstFlightThenEvery: '5 flights' }, [], 'FT', 'not done'],
  ])('%s', (_, repeat, records, pair, because) => {
    const answer = ask(repeat, records);
    expect(answer[0]).toBe(pair);
    expect(answer[1]).toContain(because);
  });

  it('is owed after the first flight, not before, and not known while flights are not counted', () => {
    const repeat = { afterFirstFlightThenEvery: '5 flights' };
    const used = (flights: number | undefined) => ({
      defects: situationOf([{ entry: '32-01', used: flights === undefined ? {} : { flights } }]).defects,
    });
    expect(ask(repeat, [], used(0))[0]).toBe('TT');
    expect(ask(repeat, [], used(1))[0]).toBe('FT');
    expect(ask(repeat, [], used(undefined))[0]).toBe('UT');
  });

  it('owed after the first flight is not done by an inspection made before that flight', () => {
    const repeat = { afterFirstFlightThenEvery: '5 flights' };
    const flown = { defects: situationOf([{ entry: '32-01', used: { flights: 2 } }]).defects };
    expect(ask(repeat, [{ doneAt: evening, usedSince: { flights: 2 } }], flown)).toMatchObject([
      'FT',
      expect.stringContaining('before it'),
    ]);
    expect(ask(repeat, [{ doneAt: evening, usedSince: { flights: 1 } }], flown)[0]).toBe('TT');
    expect(ask(repeat, [{ doneAt: evening }], flown)[0]).toBe('UT');
  });

  it('must arrive inside its hours where the operator has settled it so', () => {
    const settings = { ...situationOf([]).settings, expiryInFlight: 'arrival-inside' as const };
    const records = [{ doneAt: evening, usedSince: { flightMinutes: 540 } }];
    expect(ask({ every: '10 flight-hours' }, records)[0]).toBe('TT');
    expect(ask({ every: '10 flight-hours' }, records, { settings })[0]).toBe('FT');
  });

  it('is the work of one defect where two stand on the same row', () => {
    const defects = situationOf([{ entry: '32-01' }, { entry: '32-01', units: ['2'] }]).defects;
    expect(ask('once', [{ doneAt: evening, defect: 'D1' }], { defects })[0]).toBe('TT');
    expect(ask('once', [{ doneAt: evening, defect: 'D2' }], { defects })[0]).toBe('FT');
    expect(ask('once', [{ doneAt: evening }], { defects })[0]).toBe('FT');
  });

  it.each([
    [true, 'FT'],
    [false, 'FF'],
    [null, 'FU'],
  ])('that needs a person at the station hangs on whether one is there: %s', (value, pair) => {
    const facts = { 'flight.authorisedPersonAtStation': { value } };
    expect(ask('once', [], { facts }, { needsPersonAtStation: true })[0]).toBe(pair);
    expect(ask('once', [{ possible: true }], { facts }, { needsPersonAtStation: true })[0]).toBe('FT');
    expect(ask('once', [{ doneAt: evening }], { facts }, { needsPersonAtStation: true })[0]).toBe('TT');
  });
});
