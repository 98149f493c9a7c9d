import { EntitySchema } from 'typeorm';
import { day, id, instant, key, nullable, text, yesNo } from './column.js';
import { toMember, toOperator } from './foreign-key.js';

/** One revision of an operator's MEL for a type, as it was loaded. Only `inForce` ever changes. */
export interface MelRevisionRow {
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

export const MelRevisionTable = new EntitySchema<MelRevisionRow>({
  name: 'mel_revision',
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
  uniques: [{ name: 'mel_revision_once', columns: ['operatorId', 'aircraftType', 'document', 'revision'] }],
  indices: [
    { name: 'mel_revision_in_force', columns: ['operatorId', 'aircraftType'], unique: true, where: 'in_force' },
  ],
  checks: [{ name: 'mel_revision_sha256', expression: "sha256 ~ '^[0-9a-f]{64}$'" }],
  foreignKeys: [toOperator('mel_revision_operator'), toMember('mel_revision_loaded_by', 'loadedBy')],
});
