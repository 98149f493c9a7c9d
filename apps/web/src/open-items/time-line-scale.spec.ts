import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromNow, markAt, scaleFor, ticksOf } from './time-line-scale.js';

const NOW = '2026-05-14T06:00:00Z';
const after = (hours: number): string => new Date(Date.parse(NOW) + hours * 3_600_000).toISOString();

describe('the line of time', () => {
  it('is as long as the last end asks for, between three and fourteen days', () => {
    expect(scaleFor(NOW, []).days).toBe(3);
    expect(scaleFor(NOW, [after(20), after(24 * 9 + 1)]).days).toBe(10);
    expect(scaleFor(NOW, [after(24 * 200)]).days).toBe(14);
  });

  it('puts ends in their order, and says what lies beyond it or is over', () => {
    fc.assert(
      fc.property(fc.integer({ min: -500, max: 2000 }), fc.integer({ min: -500, max: 2000 }), (one, other) => {
        const scale = scaleFor(NOW, [after(240)]);
        const [sooner, later] = [Math.min(one, other), Math.max(one, other)].map((hours) =>
          markAt(scale, after(hours), 'fixed'),
        );
        expect(sooner?.at).toBeLessThanOrEqual(later?.at ?? 0);
        expect(markAt(scale, after(one), 'projected')).toMatchObject({ over: one <= 0, beyond: one > 240 });
      }),
    );
  });

  it('has a tick for each day', () => {
    expect(ticksOf(scaleFor(NOW, [after(90)]))).toEqual([0, 0.25, 0.5, 0.75, 1]);
  });

  it('says how long that is without gaining an hour', () => {
    const scale = scaleFor(NOW, []);
    expect([4.9, 24, 52, 25, -1].map((hours) => fromNow(scale, after(hours)))).toEqual([
      '4 h',
      '1 day',
      '2 days 4 h',
      '1 day 1 h',
      'over',
    ]);
  });
});
