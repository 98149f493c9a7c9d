import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { accountOfUse, countUsed, rectificationWindow, type Leg } from './index.js';

const clockOf = (interval: string) =>
  rectificationWindow({ category: 'A', interval, recordedAt: '2026-05-14T06:10Z', base: 'UTC', tzdb: '2025c' });

const leg = (offBlockAt: string, minutes: number): Leg => ({
  offBlockAt,
  onBlockAt: new Date(Date.parse(offBlockAt) + 15 * 60_000).toISOString(),
  blockMinutes: 15,
  flightMinutes: minutes,
  cycles: Number(minutes > 0),
  landings: Number(minutes > 0),
});

describe('the account of use', () => {
  it('tells each leg and what is used with it, in the order flown', () => {
    const legs = [leg('2026-05-14T07:40Z', 35), leg('2026-05-14T07:00Z', 0), leg('2026-05-14T06:00Z', 20)];
    expect(accountOfUse(clockOf('4 flights or 6 flight-hours, from the next flight'), legs)).toEqual([
      {
        offBlockAt: '2026-05-14T06:00:00Z',
        text: '14 May 2026 06:00 UTC (left before the start): 0 of 4 flights, 0 min of 6 flight-hours',
      },
      {
        offBlockAt: '2026-05-14T07:00:00Z',
        text: '14 May 2026 07:00 UTC (back on the ramp): 0 of 4 flights, 0 min of 6 flight-hours',
      },
      { offBlockAt: '2026-05-14T07:40:00Z', text: '14 May 2026 07:40 UTC: 1 of 4 flights, 35 min of 6 flight-hours' },
    ]);
  });

  it('ends with what the whole list used', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 90 }), { minLength: 1, maxLength: 9 }), (minutes) => {
        const legs = minutes.map((one, index) =>
          leg(new Date(Date.UTC(2026, 4, 14, 7 + index * 5)).toISOString(), one),
        );
        const clock = clockOf('40 flights');
        const { flights } = countUsed(clock, legs);
        expect(accountOfUse(clock, legs).at(-1)?.text).toMatch(new RegExp(`: ${flights} of 40 flights$`));
      }),
    );
  });

  it('is empty where nothing is counted from use, and leaves out what began later', () => {
    expect(accountOfUse(clockOf('3 calendar-days or 80 hours'), [leg('2026-05-14T07:40Z', 35)])).toEqual([]);
    const legs = [leg('2026-05-14T07:40Z', 35), leg('2026-05-15T07:40Z', 35)];
    expect(accountOfUse(clockOf('4 flights'), legs, { at: '2026-05-14T08:00Z' })).toHaveLength(1);
  });

  it('says what of stations is not known, and what is passed', () => {
    const clock = clockOf('next departure from a designated station');
    const settings = { designatedStations: ['QVR'] };
    const from = (station: string | null) => [{ ...leg('2026-05-14T07:40Z', 35), from: station }];
    const text = (station: string | null) => accountOfUse(clock, from(station), settings)[0]?.text;
    expect(text('QDM')).toContain('not yet the next departure');
    expect(text('QVR')).toContain('past the next departure');
    expect(text(null)).toContain('is not known');
  });
});
