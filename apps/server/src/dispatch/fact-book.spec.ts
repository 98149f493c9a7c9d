import { expect, it } from 'vitest';
import type { FactRow, FlightRow } from '#store';
import { factBook, stillPlanned } from './fact-book.js';

const answer = (changes: Partial<FactRow>): FactRow => ({
  operatorId: 'o',
  id: 'f',
  aircraftId: 'a',
  flightId: 'fl',
  key: 'flight.icing',
  value: 'none',
  source: 'forecast 12',
  answeredBy: 'p',
  observedAt: '2026-01-15T12:00:00.000Z',
  validUntil: null,
  enteredAt: '2026-01-15T12:01:00.000Z',
  ...changes,
});
const flight = { facts: { 'flight.icing': null, 'flight.level': 330 } } as unknown as FlightRow;

it('an answer stands before what the plan said, and before what the plan left open', () => {
  expect(stillPlanned(flight, factBook([answer({})]))).toEqual({ 'flight.level': 330 });
});

it('without an answer the plan speaks, also where it says that nobody knows', () => {
  expect(stillPlanned(flight, {})).toEqual({ 'flight.icing': null, 'flight.level': 330 });
});

it('an answer of limited age that names no end is good for as long as such facts are', () => {
  expect(factBook([answer({})])['flight.icing']).toMatchObject({ validUntil: '2026-01-15T18:00:00.000Z' });
  const until = '2026-01-15T13:00:00.000Z';
  expect(factBook([answer({ validUntil: until })])['flight.icing']).toMatchObject({ validUntil: until });
});

it('an answer about the flight stands before one about the aircraft', () => {
  const rows = [answer({ value: 'known' }), answer({ flightId: null })];
  expect(factBook(rows)['flight.icing']).toMatchObject({ value: 'known' });
  expect(factBook(rows.toReversed())['flight.icing']).toMatchObject({ value: 'known' });
});
