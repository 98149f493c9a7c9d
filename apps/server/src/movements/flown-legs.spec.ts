import { describe, expect, it } from 'vitest';
import type { FlightRow, LegRow, Tx } from '#store';
import { flownLegs, legOfPlan } from './flown-legs.js';

const planned = (id: string, offBlockAt: string, onBlockAt: string | null): FlightRow =>
  ({ id, offBlockAt, onBlockAt, flightMinutes: 130 }) as FlightRow;

const told = (offBlockAt: string, changes: Partial<LegRow> = {}): LegRow =>
  ({
    offBlockAt,
    airborneAt: null,
    landedAt: null,
    onBlockAt: null,
    blockMinutes: 100,
    flightMinutes: 90,
    cycles: 1,
    landings: 1,
    flightId: null,
    ...changes,
  }) as LegRow;

const counted = async (flights: FlightRow[], legs: LegRow[]): Promise<number[]> => {
  const tx = {
    flights: { flown: async () => flights },
    legs: { flown: async () => legs },
    engineCounts: { inForce: async () => [] },
  } as unknown as Tx;
  return (await flownLegs(tx, 'aircraft', '2026-01-14T00:00:00.000Z')).map(({ flightMinutes }) => flightMinutes);
};

describe('a planned flight marked as flown', () => {
  const morning = planned('one', '2026-01-15T06:00:00.000Z', '2026-01-15T08:30:00.000Z');

  it('counts while no leg speaks of it, also when another flight has legs', async () => {
    expect(await counted([morning], [])).toEqual([130]);
    expect(await counted([morning], [told('2026-01-15T10:00:00.000Z')])).toEqual([130, 90]);
    expect(await counted([morning], [told('2026-01-14T10:00:00.000Z')])).toEqual([90, 130]);
  });

  it('gives way to the leg that is linked to it, however late that left', async () => {
    expect(await counted([morning], [told('2026-01-15T14:00:00.000Z', { flightId: 'one' })])).toEqual([90]);
  });

  it('gives way to a leg in its time under another number, and not to one that ends where it begins', async () => {
    const before = { onBlockAt: '2026-01-15T06:00:00.000Z' };
    expect(await counted([morning], [told('2026-01-15T08:29:00.000Z')])).toEqual([90]);
    expect(await counted([morning], [told('2026-01-15T04:00:00.000Z', before)])).toEqual([90, 130]);
  });

  it('gives way to a return to the ramp, which flew nothing', async () => {
    const ramp = { flightId: 'one', flightMinutes: 0, cycles: 0, landings: 0 };
    expect(await counted([morning], [told('2026-01-15T06:05:00.000Z', ramp)])).toEqual([0]);
  });
});

it('takes airborne minutes from the plan, and the block where there are none', () => {
  const flight = planned('one', '2026-01-15T06:00:00Z', '2026-01-15T08:30:00Z');
  expect(legOfPlan(flight)).toMatchObject({ blockMinutes: 150, flightMinutes: 130 });
  expect(legOfPlan({ ...flight, flightMinutes: null })).toMatchObject({ blockMinutes: 150, flightMinutes: 150 });
  expect(legOfPlan({ ...flight, onBlockAt: null })).toMatchObject({ blockMinutes: 130, flightMinutes: 130 });
});
