/** Granted ten minutes late, then ferry (story 6, DERIVED): what only an authority allows, and only for its flights. */
import { describe, expect, it } from 'vitest';
import type { DefectLife } from '../defect-life.js';
import { context, deferredAs, refusalOf, signed } from '../invented.fixture.js';
import { grantFor, type FlightUnderGrant } from '../flying/grant-for.js';
import { mayDispatch } from '../flying/may-dispatch.js';
import { proceed } from '../replay.js';
import { enterGrant, type EnterGrant } from './enter-grant.js';

const at = '2026-02-06T08:00Z';
const life = deferredAs({ category: 'C' }, '2026-01-26T10:00Z');
const command = (over: Partial<EnterGrant> = {}): EnterGrant => ({
  id: 'pf12',
  by: signed('quality', at),
  document: { kind: 'permit', number: 'PF-12', authority: 'the authority of the state of registry' },
  limit: 'one flight to the base, no passengers',
  conditions: ['no passengers'],
  from: '2026-02-06T00:00Z',
  until: '2026-02-09T00:00Z',
  flights: 1,
  kindsOfFlight: null,
  ...over,
});
const granted: DefectLife = proceed(life, enterGrant(life, command(), context(at)));
const flight = (offBlockAt: string, onBlockAt?: string) =>
  ({ id: 'F1', offBlockAt, ...(onBlockAt === undefined ? {} : { onBlockAt }) }) as const;
const ferry = flight('2026-02-07T09:00Z', '2026-02-07T11:00Z');

describe('what an authority grants beyond the deadline', () => {
  it('moves no deadline', () => {
    expect(granted.limits).toEqual(life.limits);
  });

  it('carries the flight it names, and says so', () => {
    const answer = mayDispatch(granted, ferry, { flownUnder: { 'PF-12': 0 } });
    expect(answer).toEqual({ may: true, onlyUnder: 'permit PF-12', because: [] });
  });

  it('carries no other: not a second flight, not outside its days, not when that is not known', () => {
    const codes = (asked: typeof ferry | ReturnType<typeof flight>, flownUnder: Record<string, number>) =>
      mayDispatch(granted, asked, { flownUnder }).because.map(({ code }) => code);
    const no = ['past-the-deadline', 'grant-does-not-cover'];
    expect(codes(ferry, { 'PF-12': 1 })).toEqual(no);
    expect(codes(ferry, {})).toEqual(no);
    expect(codes(flight('2026-02-08T23:00Z', '2026-02-09T00:00Z'), { 'PF-12': 0 })).toEqual(no);
    expect(codes(flight('2026-02-07T09:00Z'), { 'PF-12': 0 })).toEqual(no);
  });

  it('carries the kinds of flight it names and no other, and an unknown kind is none of them', () => {
    const permit = proceed(life, enterGrant(life, command({ kindsOfFlight: ['ferry'] }), context(at)));
    const asked = (kind?: string) =>
      mayDispatch(permit, { ...ferry, ...(kind === undefined ? {} : { kind }) }, { flownUnder: { 'PF-12': 0 } });
    expect(asked('ferry')).toEqual({ may: true, onlyUnder: 'permit PF-12', because: [] });
    expect(asked('passenger').because.at(-1)?.sentence).toContain('it is for a ferry flight');
    expect(asked().because.at(-1)?.sentence).toContain('what kind of flight it is, is not known');
  });

  it('says what is not known apart from what does not fit', () => {
    const { grants } = proceed(life, enterGrant(life, command({ kindsOfFlight: ['ferry'] }), context(at)));
    const asked = (flight: FlightUnderGrant, flownUnder: Record<string, number>) => {
      const found = grantFor({ grants, defect: 'D1' }, flight, flownUnder);
      return [found?.answer, found?.asksKind];
    };
    expect(asked({ ...ferry, kind: 'ferry' }, { 'PF-12': 0 })).toEqual(['covers', false]);
    expect(asked(ferry, { 'PF-12': 0 })).toEqual(['unknown', true]);
    expect(asked(ferry, {})).toEqual(['unknown', false]);
    expect(asked(flight('2026-02-07T09:00Z'), { 'PF-12': 0 })).toEqual(['unknown', false]);
    expect(asked(ferry, { 'PF-12': 1 })).toEqual(['does-not-cover', false]);
    expect(asked(flight('2026-02-09T00:00Z'), {})).toEqual(['does-not-cover', false]);
    expect(grantFor({ grants: [], defect: 'D1' }, ferry, {})).toBeNull();
  });

  it('is chosen among several: one that covers before one that perhaps does', () => {
    const grants = ['PF-12', 'PF-13', 'PF-14'].map((number) => ({
      ...granted.grants[0]!,
      document: { ...command().document, number },
    }));
    const found = grantFor({ grants, defect: 'D1' }, ferry, { 'PF-12': 1, 'PF-14': 0 });
    expect(found?.document).toBe('permit PF-14');
    expect(grantFor({ grants, defect: 'D1' }, ferry, { 'PF-12': 1, 'PF-14': 1 })?.document).toBe('permit PF-13');
  });

  it('is not asked for while the interval still runs', () => {
    expect(mayDispatch(granted, flight('2026-02-05T09:00Z'))).toEqual({ may: true, onlyUnder: null, because: [] });
  });

  it('does not begin before its first instant', () => {
    const later = proceed(life, enterGrant(life, command({ from: '2026-02-07T09:01Z' }), context(at)));
    expect(mayDispatch(later, ferry, { flownUnder: { 'PF-12': 0 } }).may).toBe(false);
    const unlimited = proceed(life, enterGrant(life, command({ flights: null }), context(at)));
    expect(mayDispatch(unlimited, ferry).may).toBe(true);
  });

  it('is refused without number, authority or limit, and when it would end before it begins', () => {
    const document = command().document;
    expect(
      refusalOf(() => enterGrant(life, command({ document: { ...document, number: '' } }), context(at))).code,
    ).toBe('text-missing');
    expect(
      refusalOf(() => enterGrant(life, command({ document: { ...document, authority: '' } }), context(at))).code,
    ).toBe('text-missing');
    expect(refusalOf(() => enterGrant(life, command({ limit: '' }), context(at))).code).toBe('text-missing');
    expect(refusalOf(() => enterGrant(life, command({ kindsOfFlight: [' '] }), context(at))).code).toBe(
      'text-missing',
    );
    expect(refusalOf(() => enterGrant(life, command({ until: '2026-02-06T00:00Z' }), context(at))).code).toBe(
      'grant-window-empty',
    );
  });
});
