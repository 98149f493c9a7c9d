import { EntitySchema } from 'typeorm';
import { day, id, instant, key, nullable, text, yesNo } from './column.js';
import { toMember, toOperator } from './foreign-key.js';

/** One revision of a file for a type, as it was loaded: an MEL, a library of work cards. Only `inForce` ever changes. */
export interface LoadedRevisionRow {
  operatorId: string;
  id: string;
  aircraftType: string;
  document: string;
  revision: string;
  effectiveOn: string;
  /** The checked content as JSON text. */
  content: string;
  /** SHA-256 of `content`, as 64 hex digits. */
  sha256: string;
  loadedBy: string | null;
  loadedAt: string;
  /** At most one revision is in force for a type. */
  inForce: boolean;
}

/** A revision without its text, which is long and never changes: keep what you made of it under its id. */
export type LoadedSummary = Omit<LoadedRevisionRow, 'content'>;

export const SUMMARY_COLUMNS = {
  operatorId: true,
  id: true,
  aircraftType: true,
  document: true,
  revision: true,
  effectiveOn: true,
  sha256: true,
  loadedBy: true,
  loadedAt: true,
  inForce: true,
} as const satisfies Record<keyof LoadedSummary, true>;

export const loadedRevisionTable = (name: string): EntitySchema<LoadedRevisionRow> =>
  new EntitySchema<LoadedRevisionRow>({
    name,
    columns: {
      operatorId: key(),
      id: key(),
      aircraftType: text(),
      document: text(),
      revision: text(),
      effectiveOn: day(),
      content: text(),
      sha256: text(),
      loadedBy: id(nullable),
      loadedAt: instant(),
      inForce: yesNo({ default: false }),
    },
    uniques: [{ name: `${name}_once`, columns: ['operatorId', 'aircraftType', 'document', 'revision'] }],
    indices: [{ name: `${name}_in_force`, columns: ['operatorId', 'aircraftType'], unique: true, where: 'in_force' }],
    checks: [{ name: `${name}_sha256`, expression: "sha256 ~ '^[0-9a-f]{64}$'" }],
    foreignKeys: [toOperator(`${name}_operator`), toMember(`${name}_loaded_by`, 'loadedBy')],
  });
