import { EntitySchema } from 'typeorm';
import { id, instant, json, key, nullable, text } from './column.js';
import { toMember, within } from './foreign-key.js';

/** An answer somebody gave, or a source reported. A later answer stands beside it; none is ever changed. */
export interface FactRow {
  operatorId: string;
  id: string;
  aircraftId: string;
  /** Null when it is about the aircraft whatever it flies. */
  flightId: string | null;
  key: string;
  /** Null when it was asked for and nobody knew. */
  value: string | number | boolean | null;
  source: string | null;
  answeredBy: string | null;
  observedAt: string;
  validUntil: string | null;
  enteredAt: string;
}

export const FactTable = new EntitySchema<FactRow>({
  name: 'fact',
  columns: {
    operatorId: key(),
    id: key(),
    aircraftId: id(),
    flightId: id(nullable),
    key: text(),
    value: json(nullable),
    source: text(nullable),
    answeredBy: id(nullable),
    observedAt: instant(),
    validUntil: instant(nullable),
    enteredAt: instant(),
  },
  indices: [{ name: 'fact_of_aircraft', columns: ['operatorId', 'aircraftId', 'flightId', 'key', 'enteredAt'] }],
  foreignKeys: [
    within('fact_aircraft', 'aircraft', 'aircraftId'),
    within('fact_flight', 'flight', 'flightId'),
    toMember('fact_answered_by', 'answeredBy'),
  ],
});
