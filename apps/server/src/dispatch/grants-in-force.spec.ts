/** How many flights of a permit are used: story 6 (DERIVED) asks for that one flight and nothing else. */
import { describe, expect, it } from 'vitest';
import type { AuthorityGranted, DefectLife } from '#deferrals';
import type { AircraftRow, Tx } from '#store';
import type { OpenedDefect } from '../defects/defect-book.js';
import { flightsUnderGrants, grantsInForce, type UsesUp } from './grants-in-force.js';

const life = (over: Partial<AuthorityGranted> = {}, endsAt: string | null = '2026-02-06T00:00:00Z'): DefectLife =>
  ({
    limits: [{ clock: null, until: endsAt, pair: false }],
    grants: [
      {
        document: { kind: 'permit', number: 'PF-12', authority: 'an authority' },
        limit: 'one flight, no passengers',
        from: '2026-02-06T00:00Z',
        until: '2026-02-09T00:00Z',
        flights: 1,
        kindsOfFlight: ['ferry'],
        ...over,
      },
    ],
  }) as unknown as DefectLife;

const flight = (id: string, offBlockAt: string, over: Partial<UsesUp> = {}): UsesUp => ({
  id,
  offBlockAt,
  onBlockAt: null,
  flown: false,
  kind: 'ferry',
  ...over,
});
const asked = { id: 'asked', offBlockAt: '2026-02-07T09:00:00.000Z' };
const used = (flights: UsesUp[], of = life(), about: typeof asked | null = asked) =>
  grantsInForce(of, flights, about, 'departure-inside')[0]?.flightsUsed;

describe('the flights of a permit', () => {
  it('are used by what was flown past the deadline while it was good, whatever kind it was', () => {
    expect(used([])).toBe(0);
    expect(used([flight('a', '2026-02-06T09:00:00.000Z', { flown: true, kind: 'passenger' })])).toBe(1);
    expect(used([flight('b', '2026-02-07T11:00:00.000Z', { flown: true })])).toBe(1);
    expect(used([flight('c', '2026-02-09T00:00:00.000Z', { flown: true })])).toBe(0);
  });

  it('are used by a plan that leaves before, if it may go under the permit', () => {
    expect(used([flight('a', '2026-02-06T09:00:00.000Z')])).toBe(1);
    expect(used([flight('a', '2026-02-06T09:00:00.000Z', { kind: 'passenger' })])).toBe(0);
    expect(used([flight('a', '2026-02-06T09:00:00.000Z', { kind: undefined })])).toBe(1);
    expect(
      used([flight('a', '2026-02-06T09:00:00.000Z', { kind: 'passenger' })], life({ kindsOfFlight: null })),
    ).toBe(1);
    expect(used([flight('a', '2026-02-07T10:00:00.000Z')])).toBe(0);
  });

  it('are not used by the flight that is asked for, nor by any inside the deadline', () => {
    expect(used([flight('asked', asked.offBlockAt)])).toBe(0);
    const early = life({ from: '2026-02-05T00:00Z' });
    expect(used([flight('a', '2026-02-05T23:00:00.000Z', { flown: true })], early)).toBe(0);
    const arriving = { flown: true, onBlockAt: '2026-02-06T00:30:00.000Z' };
    const late = [flight('a', '2026-02-05T23:00:00.000Z', arriving)];
    expect(grantsInForce(early, late, asked, 'arrival-inside')[0]?.flightsUsed).toBe(1);
  });

  it('count every flight where the interval has no fixed end, and only flown ones where no flight is asked for', () => {
    const counted = life({ from: '2026-02-01T00:00Z' }, null);
    expect(used([flight('a', '2026-02-02T09:00:00.000Z', { flown: true })], counted)).toBe(1);
    expect(used([flight('a', '2026-02-06T09:00:00.000Z')], life(), null)).toBe(0);
  });
});

const told = (ending: string): Tx => {
  const planned = { id: 'f', offBlockAt: '2026-02-06T10:00:00Z', onBlockAt: null, state: 'planned', facts: {} };
  return {
    flights: { between: () => Promise.resolve([planned]) },
    legs: { flown: () => Promise.resolve([{ id: 'l', flightId: 'f', ending, offBlockAt: planned.offBlockAt }]) },
  } as unknown as Tx;
};

describe('what an aircraft flies while a document is good', () => {
  it('was flown when its leg left the ground, and not when it came back to the ramp', async () => {
    const permitted = [{ life: life() }] as unknown as OpenedDefect[];
    const aircraft = { id: 'a' } as AircraftRow;
    expect(await flightsUnderGrants(told('arrived'), aircraft, permitted)).toMatchObject([{ id: 'f', flown: true }]);
    expect(await flightsUnderGrants(told('ramp'), aircraft, permitted)).toMatchObject([{ id: 'f', flown: false }]);
  });
});
