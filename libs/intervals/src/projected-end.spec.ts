import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countUsed, mayDepart, projectedEnd, rectificationWindow, type Leg, type ProjectionInput } from './index.js';

const HOUR = 3_600_000;
const START = Date.UTC(2026, 5, 1, 6);
const at = (hours: number): string => new Date(START + hours * HOUR).toISOString();

const clockOf = (interval: string, base = 'UTC') =>
  rectificationWindow({ category: 'A', interval, recordedAt: at(0), base, tzdb: '2025c' });

const leg = (hours: number, minutes = 60): Leg => ({
  offBlockAt: at(hours),
  landedAt: at(hours + minutes / 60),
  onBlockAt: at(hours + minutes / 60),
  blockMinutes: minutes,
  flightMinutes: minutes,
  cycles: 1,
  landings: 1,
});

const plan = (hours: number, minutes = 60) => ({
  offBlockAt: at(hours),
  onBlockAt: at(hours + minutes / 60),
  flightMinutes: minutes,
});

const project = (interval: string, more: Partial<ProjectionInput> = {}) => {
  const clock = clockOf(interval);
  const { legs = [], planned = [], at: now = at(24) } = more;
  return projectedEnd({ clock, at: now, used: countUsed(clock, legs, { at: now }), planned, legs, ...more });
};

describe('the projected end', () => {
  it('is the first planned departure that a recount of everything before it refuses', () => {
    const gaps = fc.array(fc.integer({ min: 2, max: 30 }), { minLength: 1, maxLength: 14 });
    const intervals = fc.constantFrom('4 flights', '3 flight-days', '5 flight-hours', '3 cycles or 2 flight-days');
    fc.assert(
      fc.property(intervals, gaps, fc.nat(13), (interval, drawn, flown) => {
        const hours = drawn.map((_, index) => drawn.slice(0, index + 1).reduce((sum, gap) => sum + gap, 0));
        const legs = hours.slice(0, flown).map((hour) => leg(hour));
        const planned = hours.slice(flown).map((hour) => plan(hour));
        const clock = clockOf(interval);
        const now = at((hours[flown] ?? 0) - 0.5);
        const stops = hours.findIndex((hour, index) => {
          const before = hours.slice(0, index).map((one) => leg(one));
          return index >= flown && mayDepart(clock, plan(hour), countUsed(clock, before)).answer === 'fails';
        });
        fc.pre(planned.length > 0);
        const end = projectedEnd({ clock, at: now, used: countUsed(clock, legs), planned, legs });
        if (stops >= 0 && end !== null) expect(end).toMatchObject({ method: 'plan', state: 'projected' });
        if (end?.method === 'plan') expect(Date.parse(end.endsAt)).toBe(Date.parse(at(hours[stops] ?? Number.NaN)));
      }),
    );
  });

  it('tells how it was found from the plan', () => {
    const planned = [plan(26), plan(30), plan(50)];
    const end = project('4 flights', { legs: [leg(1), leg(5)], planned });
    expect(end).toMatchObject({ endsAt: '2026-06-03T08:00:00Z', lastDay: '2026-06-03', method: 'plan' });
    expect(end?.sentence).toBe(
      'Projected from the plan: 2 planned flights fit; the one that leaves 3 Jun 2026 08:00 UTC does not. 4 of 4 flights are used up.',
    );
  });

  it('goes on beyond the plan by the mean use of the legs', () => {
    const legs = Array.from({ length: 20 }, (_, index) => leg(index * 12 - 120));
    const end = project('14 flights', { at: at(120), legs });
    expect(end).toMatchObject({ method: 'mean-use', endsAt: '2026-06-08T06:00:00Z' });
    expect(end?.sentence).toContain('mean use of the last 10 days (20 flights, 10 flight-days, 20 h)');
  });

  it('counts the mean use from the last planned flight on', () => {
    const legs = Array.from({ length: 20 }, (_, index) => leg(index * 12 - 240));
    const alone = project('6 flights', { at: at(0), legs });
    const planned = [plan(48), plan(72)];
    const end = project('6 flights', { at: at(0), legs, planned });
    expect(alone?.endsAt).toBe('2026-06-04T06:00:00Z');
    expect(end).toMatchObject({ method: 'mean-use', endsAt: '2026-06-06T07:00:00Z' });
    expect(end?.sentence).toContain('beyond 2 planned flights');
  });

  it('is none where a fixed end comes first, where it is over, and where nothing is known or flown', () => {
    const legs = [leg(2), leg(10)];
    expect(project('3 calendar-days', { legs })).toBe(null);
    expect(project('99 flights or 30 hours', { legs })).toBe(null);
    expect(project('2 flights', { legs })).toBe(null);
    expect(project('4 flights')).toBe(null);
    expect(project('4 flights', { legs, used: {} })).toBe(null);
    expect(project('4 flights or 26 hours', { legs, planned: [plan(27)] })).toBe(null);
  });

  it('never comes later when more is used', () => {
    const legs = Array.from({ length: 12 }, (_, index) => leg(index * 8 - 72));
    fc.assert(
      fc.property(fc.nat(7), fc.nat(7), (one, other) => {
        const [less, more] = [Math.min(one, other), Math.max(one, other)].map((flights) =>
          project('8 flights', { legs, used: { flights } }),
        );
        if (less && more) expect(Date.parse(more.endsAt)).toBeLessThanOrEqual(Date.parse(less.endsAt));
      }),
    );
  });

  it('where the later of several counts is the last of them', () => {
    const legs = Array.from({ length: 20 }, (_, index) => leg(index * 12 - 240));
    const first = project('2 flights or 8 flight-hours', { at: at(0), legs });
    const later = project('2 flights or 8 flight-hours, whichever is later', { at: at(0), legs });
    expect([first?.lastDay, later?.lastDay]).toEqual(['2026-06-02', '2026-06-05']);
  });
});
