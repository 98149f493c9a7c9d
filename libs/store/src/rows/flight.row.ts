import { EntitySchema } from 'typeorm';
import { id, instant, json, key, nullable, text, version, whole } from './column.js';
import { within } from './foreign-key.js';

/** One flight, from the plan until it is flown or cancelled. */
export interface FlightRow {
  operatorId: string;
  id: string;
  aircraftId: string;
  number: string;
  /** Station codes. */
  fromStation: string;
  toStation: string;
  offBlockAt: string;
  onBlockAt: string | null;
  /** Airborne minutes. */
  flightMinutes: number | null;
  state: 'planned' | 'flown' | 'cancelled';
  /** Facts that came with the plan, by fact key. */
  facts: Record<string, unknown>;
  version: number;
}

export const FlightTable = new EntitySchema<FlightRow>({
  name: 'flight',
  columns: {
    operatorId: key(),
    id: key(),
    aircraftId: id(),
    number: text(),
    fromStation: text(),
    toStation: text(),
    offBlockAt: instant(),
    onBlockAt: instant(nullable),
    flightMinutes: whole(nullable),
    state: text({ default: 'planned' }),
    facts: json({ default: {} }),
    version: version(),
  },
  indices: [{ name: 'flight_of_aircraft', columns: ['operatorId', 'aircraftId', 'offBlockAt'] }],
  checks: [
    { name: 'flight_minutes_counted', expression: 'flight_minutes >= 0' },
    { name: 'flight_state', expression: "state in ('planned', 'flown', 'cancelled')" },
  ],
  foreignKeys: [
    within('flight_aircraft', 'aircraft', 'aircraftId'),
    within('flight_from', 'station', 'fromStation', 'code'),
    within('flight_to', 'station', 'toStation', 'code'),
  ],
});
