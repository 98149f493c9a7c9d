import { describe, expect, it } from 'vitest';
import { situationOf } from '../../../../tests/support/small-mel.js';
import { Unknown } from '../evaluate/marker.js';
import type { KnownFact, Situation } from '../situation.js';
import { FactBook } from './fact-book.js';

const view = (key: string, facts: Record<string, KnownFact>, change: Partial<Situation> = {}) =>
  new FactBook(situationOf([], { facts, ...change })).view(key);
const reason = (key: string, facts: Record<string, KnownFact>, change: Partial<Situation> = {}) => {
  const { value } = view(key, facts, change);
  return value instanceof Unknown ? value.reason : value;
};

describe('the facts of a situation', () => {
  it('keep their source and age', () => {
    const fact = { value: 'none', source: 'forecast', by: 'Eve Long', observedAt: '2026-03-10T05:00Z' };
    expect(view('flight.icing', { 'flight.icing': fact })).toEqual({ ...fact, validUntil: '2026-03-10T11:00:00Z' });
  });

  it.each([
    ['nobody gave it', undefined, 'nobody has said'],
    ['it was asked for', { value: null }, 'asked for and not yet answered'],
    ['it is of another type', { value: 3 }, '3 is not a text'],
    ['it is none of its choices', { value: 'some' }, '"some" is none of none, forecast, known'],
    [
      'it ends before departure',
      { value: 'none', validUntil: '2026-03-10T07:59Z' },
      'it was valid until 2026-03-10T07:59Z only, which is before departure',
    ],
    [
      'it is older than its kind of fact may be',
      { value: 'none', observedAt: '2026-03-10T01:00Z' },
      'it was valid until 2026-03-10T07:00:00Z only, which is before departure',
    ],
  ])('are unknown when %s, and say so', (_, fact, why) => {
    expect(reason('flight.icing', fact === undefined ? {} : { 'flight.icing': fact })).toBe(why);
  });

  it('are valid up to the minute of departure', () => {
    expect(reason('flight.icing', { 'flight.icing': { value: 'none', validUntil: '2026-03-10T08:00Z' } })).toBe(
      'none',
    );
  });

  it('are not known about a flight that is not planned', () => {
    const fact = { 'flight.rvsm': { value: true } };
    expect(reason('flight.rvsm', fact, { flight: null })).toBe('no flight is planned');
  });

  it('come from the flight before the rest, and from the aircraft itself', () => {
    const { flight } = situationOf([]);
    const own = { ...flight!, facts: { 'flight.rvsm': false } };
    expect(reason('flight.rvsm', { 'flight.rvsm': { value: true } }, { flight: own })).toBe(false);
    expect(reason('flight.flightMinutes', {})).toBe(105);
    expect(reason('aircraft.type', {})).toBe('X');
    expect(reason('aircraft.serial', {}, { aircraft: { ...situationOf([]).aircraft, serial: null } })).toBe(
      'asked for and not yet answered',
    );
  });

  it('know nothing by a key that every object answers to', () => {
    expect(reason('constructor', {})).toBe('nobody has said');
  });
});
