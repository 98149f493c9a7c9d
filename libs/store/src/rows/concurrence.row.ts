import { EntitySchema } from 'typeorm';
import { id, instant, json, key, nullable, text, whole } from './column.js';
import { toMember, within } from './foreign-key.js';

/** That a second person concurs to a deferral, for a defect as it stood. Never changed. */
export interface ConcurrenceRow {
  operatorId: string;
  id: string;
  defectId: string;
  /** Version of the defect that was read; once it is another, this one is good for nothing. */
  defectVersion: number;
  /** In words: `MEL 33-42-11 row 1`. */
  basis: string;
  /** What was concurred to, member by member; null where that was not kept yet. */
  asked: Record<string, unknown> | null;
  personId: string;
  /** Without names, as acts are stored. */
  signature: object;
  givenAt: string;
  entryId: string;
}

export const ConcurrenceTable = new EntitySchema<ConcurrenceRow>({
  name: 'concurrence',
  columns: {
    operatorId: key(),
    id: key(),
    defectId: id(),
    defectVersion: whole(),
    basis: text(),
    asked: json(nullable),
    personId: id(),
    signature: json(),
    givenAt: instant(),
    entryId: id(),
  },
  indices: [{ name: 'concurrence_of_defect', columns: ['operatorId', 'defectId', 'givenAt'] }],
  foreignKeys: [
    within('concurrence_defect', 'defect', 'defectId'),
    toMember('concurrence_person', 'personId'),
    within('concurrence_entry', 'record_entry', 'entryId'),
  ],
});
