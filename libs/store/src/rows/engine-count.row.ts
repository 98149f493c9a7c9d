import { EntitySchema } from 'typeorm';
import { id, instant, key, nullable, text, whole } from './column.js';
import { toMember, within } from './foreign-key.js';

/**
 * One version of what a person states of an engine: what its counters read at an instant, or what it used that no leg
 * tells. The highest version counts; one that was mistaken ends as withdrawn.
 */
export interface EngineCountRow {
  operatorId: string;
  id: string;
  /** From 1. */
  version: number;
  aircraftId: string;
  kind: 'reading' | 'run' | 'withdrawn';
  /** Where it stands on the aircraft, as the MEL names the unit. */
  position: string;
  /** Of the engine that stands there; needed for a reading. */
  serial: string | null;
  at: string;
  /** A counter for a reading, what was used for a run. */
  minutes: number;
  cycles: number;
  /** Where it is known from, or why it was changed. */
  reason: string;
  personId: string;
  writtenAt: string;
  entryId: string;
}

export const EngineCountTable = new EntitySchema<EngineCountRow>({
  name: 'engine_count',
  columns: {
    operatorId: key(),
    id: key(),
    version: whole({ primary: true }),
    aircraftId: id(),
    kind: text(),
    position: text(),
    serial: text(nullable),
    at: instant(),
    minutes: whole(),
    cycles: whole(),
    reason: text(),
    personId: id(),
    writtenAt: instant(),
    entryId: id(),
  },
  indices: [{ name: 'engine_count_of_aircraft', columns: ['operatorId', 'aircraftId', 'at'] }],
  checks: [
    { name: 'engine_count_version_counted', expression: 'version > 0' },
    { name: 'engine_count_kind', expression: "kind in ('reading', 'run', 'withdrawn')" },
    { name: 'engine_count_minutes_counted', expression: 'minutes >= 0' },
    { name: 'engine_count_cycles_counted', expression: 'cycles >= 0' },
    { name: 'engine_count_reading_of_serial', expression: "kind <> 'reading' or serial is not null" },
  ],
  foreignKeys: [
    within('engine_count_aircraft', 'aircraft', 'aircraftId'),
    toMember('engine_count_person', 'personId'),
    within('engine_count_entry', 'record_entry', 'entryId'),
  ],
});
