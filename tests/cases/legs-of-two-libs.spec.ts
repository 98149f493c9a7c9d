import { expect, it } from 'vitest';
import { countUsed, type Leg, rectificationWindow } from '#intervals';
import { readMovements } from '#movements';

/** IATA AHM 780 examples D1 and A1 on one day: block 4:20, flight 4:00, one cycle (published arithmetic, SEEN). */
it('lets intervals count what movements read, though neither lib enters the other', () => {
  const text = [
    'MVT',
    'ZZ200/21.PMDFG.CDG',
    'AD1100/1115 EA1500 FRA',
    '',
    'MVT',
    'ZZ200/21.PMDFG.FRA',
    'AA1515/1520',
  ];
  const { legs } = readMovements(text.join('\n'), { receivedAt: '2026-05-21T15:30:00Z' });
  const counted: readonly Leg[] = legs;
  const clock = rectificationWindow({
    category: 'A',
    interval: '4 flights',
    recordedAt: '2026-05-20T10:00Z',
    base: 'UTC',
    tzdb: '2025c',
  });
  expect(countUsed(clock, counted)).toMatchObject({ flights: 1, blockMinutes: 260, flightMinutes: 240, cycles: 1 });
});
