import { expect, it } from 'vitest';
import type { AircraftRow, Tx } from '#store';
import type { OpenedDefect } from '../defects/defect-book.js';
import { flightsUnderGrants } from './grants-in-force.js';

const aircraft = { id: 'a' } as AircraftRow;
const grant = { from: '2026-02-06T00:00:00Z', until: '2026-02-09T00:00:00Z' };
const permitted = [{ life: { grants: [grant] } }] as unknown as OpenedDefect[];
const planned = { id: 'f', offBlockAt: '2026-02-06T10:00:00Z', onBlockAt: null, state: 'planned', facts: {} };

const told = (ending: string): Tx =>
  ({
    flights: { between: () => Promise.resolve([planned]) },
    legs: { flown: () => Promise.resolve([{ id: 'l', flightId: 'f', ending, offBlockAt: planned.offBlockAt }]) },
  }) as unknown as Tx;

it('uses a document up by a flight that flew, and not by a return to the ramp', async () => {
  expect(await flightsUnderGrants(told('arrived'), aircraft, permitted)).toMatchObject([{ id: 'f', flown: true }]);
  expect(await flightsUnderGrants(told('ramp'), aircraft, permitted)).toMatchObject([{ id: 'f', flown: false }]);
});
