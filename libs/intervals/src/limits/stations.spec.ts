import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countUsed, mayDepart, rectificationWindow, whatIsLeft, type Leg } from '../index.js';

const clockOf = (interval: string) =>
  rectificationWindow({ category: 'A', interval, recordedAt: '2026-06-01T06:00Z', base: 'UTC', tzdb: '2025c' });

const designated = clockOf('next departure from a designated station');
const opportunity = clockOf('first opportunity at a base');
const settings = { designatedStations: ['QVR', 'QHT'], bases: ['QVR'], opportunityMinutes: 0 };

const leg = (hour: number, from: string | null, to: string | null): Leg => ({
  offBlockAt: new Date(Date.UTC(2026, 5, 1, hour)).toISOString(),
  onBlockAt: new Date(Date.UTC(2026, 5, 1, hour, 50)).toISOString(),
  landedAt: new Date(Date.UTC(2026, 5, 1, hour, 45)).toISOString(),
  blockMinutes: 50,
  flightMinutes: 40,
  cycles: 1,
  landings: 1,
  from,
  to,
});

const leaves = (hour: number, from?: string) => ({
  offBlockAt: new Date(Date.UTC(2026, 5, 1, hour)).toISOString(),
  ...(from === undefined ? {} : { from }),
});

describe('before the next departure from a designated station', () => {
  const ask = (from: string | undefined, legs: readonly Leg[], own = settings) =>
    mayDepart(designated, leaves(20, from), countUsed(designated, legs, own), own).answer;

  it('lets a flight go from every other station, and from none of these', () => {
    const stations = ['QVR', 'QHT', 'QDM', 'QAL'];
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...stations), { minLength: 1, maxLength: 6 }), (route) => {
        const legs = route.slice(0, -1).map((from, index) => leg(7 + index, from, route[index + 1] ?? null));
        const passed = route.some((station) => settings.designatedStations.includes(station));
        expect(ask(route.at(-1), legs)).toBe(passed ? 'fails' : 'holds');
      }),
    );
  });

  it('is not known without the station, the list, or the stations left before', () => {
    expect(ask(undefined, [])).toBe('unknown');
    expect(mayDepart(designated, leaves(20, 'QDM'), {}, settings).answer).toBe('unknown');
    expect(mayDepart(designated, leaves(20, 'QDM'), countUsed(designated, []), {}).answer).toBe('unknown');
    expect(ask('QDM', [leg(7, null, 'QDM')])).toBe('unknown');
    expect(ask('QVR', [leg(7, null, 'QVR')])).toBe('fails');
  });

  it('is told by where the aircraft stands, and passed once it left one', () => {
    const left = (legs: readonly Leg[]) =>
      whatIsLeft(designated, '2026-06-01T19:00Z', countUsed(designated, legs, settings), settings);
    expect(left([leg(7, 'QDM', 'QVR')])).toMatchObject({
      isOver: false,
      sentence: 'until the next departure from a designated station; it is at QVR.',
    });
    expect(left([leg(7, 'QVR', 'QDM')]).isOver).toBe(true);
    expect(whatIsLeft(designated, '2026-06-01T19:00Z', {}).isOver).toBe(null);
  });

  it('ends the row though its flight-days are not used up', () => {
    const both = clockOf('3 flight-days or next departure from a designated station');
    const used = countUsed(both, [], settings);
    expect(mayDepart(both, leaves(20, 'QVR'), used, settings).answer).toBe('fails');
    expect(mayDepart(both, leaves(20, 'QDM'), used, settings).answer).toBe('holds');
  });
});

describe('at the first opportunity at a base', () => {
  const legs = [leg(7, 'QDM', 'QVR')];
  const ask = (hour: number, opportunityMinutes: number) => {
    const own = { ...settings, opportunityMinutes };
    return mayDepart(opportunity, leaves(hour, 'QVR'), countUsed(opportunity, legs, own), own).answer;
  };

  it('is any stay at a base, unless the operator settled how long one takes', () => {
    expect(ask(8, 0)).toBe('fails');
    expect([ask(9, 120), ask(10, 120)]).toEqual(['holds', 'fails']);
    expect(mayDepart(opportunity, leaves(20, 'QHT'), countUsed(opportunity, legs, settings), settings).answer).toBe(
      'holds',
    );
  });

  it('counts the stay from the record where the aircraft stood there then', () => {
    const own = { ...settings, opportunityMinutes: 120 };
    const before = [leg(3, 'QDM', 'QVR')];
    const used = countUsed(opportunity, before, own);
    expect(used.standsSince).toBe('2026-06-01T06:00:00Z');
    expect(mayDepart(opportunity, leaves(7, 'QVR'), used, own).answer).toBe('holds');
    expect(mayDepart(opportunity, leaves(8, 'QVR'), used, own).answer).toBe('fails');
  });

  it('is passed by a departure after one, and not by a short turn', () => {
    const turn = [leg(7, 'QDM', 'QVR'), leg(9, 'QVR', 'QDM')];
    const used = (opportunityMinutes: number) => countUsed(opportunity, turn, { ...settings, opportunityMinutes });
    expect([used(60).baseOpportunities, used(70).baseOpportunities, used(71).baseOpportunities]).toEqual([1, 1, 0]);
  });

  it('is not known without the list of bases or the time it stood there', () => {
    expect(mayDepart(opportunity, leaves(20, 'QVR'), countUsed(opportunity, []), {}).answer).toBe('unknown');
    const own = { ...settings, opportunityMinutes: 120 };
    expect(mayDepart(opportunity, leaves(20, 'QVR'), countUsed(opportunity, [], own), own).answer).toBe('unknown');
  });
});
