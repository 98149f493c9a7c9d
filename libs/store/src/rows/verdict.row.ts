import { EntitySchema } from 'typeorm';
import { id, instant, json, key, nullable, text } from './column.js';
import { within } from './foreign-key.js';

/** An answer that was given and recorded, with the hash of the situation it was computed from. */
export interface VerdictRow {
  operatorId: string;
  id: string;
  aircraftId: string;
  flightId: string | null;
  /** The code, e.g. `may-fly`. */
  verdict: string;
  situationSha256: string;
  answer: object;
  at: string;
  entryId: string;
}

export const VerdictTable = new EntitySchema<VerdictRow>({
  name: 'verdict',
  columns: {
    operatorId: key(),
    id: key(),
    aircraftId: id(),
    flightId: id(nullable),
    verdict: text(),
    situationSha256: text({ name: 'situation_sha256' }),
    answer: json(),
    at: instant(),
    entryId: id(),
  },
  indices: [{ name: 'verdict_of_aircraft', columns: ['operatorId', 'aircraftId', 'at'] }],
  checks: [{ name: 'verdict_situation_sha256', expression: "situation_sha256 ~ '^[0-9a-f]{64}$'" }],
  foreignKeys: [
    within('verdict_aircraft', 'aircraft', 'aircraftId'),
    within('verdict_flight', 'flight', 'flightId'),
    within('verdict_entry', 'record_entry', 'entryId'),
  ],
});
