import { describe, expect, it } from 'vitest';
import type { FlightRow } from '#store';
import { flightName, planOfLeg } from './plan-of-leg.js';

const plan = (id: string, changes: Partial<FlightRow> = {}): FlightRow =>
  ({
    id,
    aircraftId: 'one',
    number: 'QB 410',
    fromStation: 'QXA',
    toStation: 'QXB',
    offBlockAt: '2026-05-14T07:00:00.000Z',
    ...changes,
  }) as FlightRow;

const leg = (changes: object = {}) => ({
  aircraftId: 'one',
  flight: 'QB410',
  scheduledOn: '2026-05-14',
  fromStation: 'QXA' as string | null,
  toStation: 'QXB' as string | null,
  offBlockAt: '2026-05-14T07:12:00.000Z',
  ...changes,
});

describe('the planned flight of a leg', () => {
  it('has its number, station, aircraft and day', () => {
    expect(planOfLeg(leg(), [plan('a')])).toBe('a');
    expect(planOfLeg(leg({ flight: 'QB411' }), [plan('a')])).toBeNull();
    expect(planOfLeg(leg({ aircraftId: 'two' }), [plan('a')])).toBeNull();
    expect(planOfLeg(leg({ fromStation: 'QXC' }), [plan('a')])).toBeNull();
    expect(planOfLeg(leg({ scheduledOn: '2026-05-15' }), [plan('a')])).toBeNull();
  });

  it('is found however late the leg left', () => {
    expect(planOfLeg(leg({ offBlockAt: '2026-05-15T06:00:00.000Z' }), [plan('a')])).toBe('a');
  });

  it('is that of the next day for a later leg of the same flight', () => {
    const second = plan('b', { fromStation: 'QXB', toStation: 'QXC', offBlockAt: '2026-05-15T00:30:00.000Z' });
    const onward = leg({ fromStation: 'QXB', toStation: 'QXC', offBlockAt: '2026-05-15T00:40:00.000Z' });
    expect(planOfLeg(onward, [plan('a'), second])).toBe('b');
  });

  it('is found by its destination where the departure is not known', () => {
    expect(planOfLeg(leg({ fromStation: null }), [plan('a'), plan('b', { toStation: 'QXC' })])).toBe('a');
  });

  it('is the nearest of two', () => {
    const later = plan('b', { offBlockAt: '2026-05-14T19:00:00.000Z' });
    expect(planOfLeg(leg({ offBlockAt: '2026-05-14T18:00:00.000Z' }), [plan('a'), later])).toBe('b');
  });
});

it.each([
  ['QB 410', 'QB410'],
  ['qb0410', 'QB410'],
  ['QBQ-0410A', 'QB410A'],
  ['7Q1', '7Q1'],
  ['CHARTER', 'CHARTER'],
])('the flight number %s is %s in messages', (number, name) => {
  expect(flightName(number, { QBQ: 'QB' })).toBe(name);
});
