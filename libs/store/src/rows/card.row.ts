import { EntitySchema } from 'typeorm';
import { day, id, instant, json, key, nullable, text, yesNo } from './column.js';
import { toMember, toOperator, within } from './foreign-key.js';

/** One revision of a library of work cards for a type, as it was loaded. Only `inForce` ever changes. */
export interface CardLibraryRow {
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
  /** At most one library is in force for a type. */
  inForce: boolean;
}

export const CardLibraryTable = new EntitySchema<CardLibraryRow>({
  name: 'card_library',
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
  uniques: [{ name: 'card_library_once', columns: ['operatorId', 'aircraftType', 'document', 'revision'] }],
  indices: [
    { name: 'card_library_in_force', columns: ['operatorId', 'aircraftType'], unique: true, where: 'in_force' },
  ],
  checks: [{ name: 'card_library_sha256', expression: "sha256 ~ '^[0-9a-f]{64}$'" }],
  foreignKeys: [toOperator('card_library_operator'), toMember('card_library_loaded_by', 'loadedBy')],
});

/** A revision of a manual, or of one task of it, as somebody recorded it. */
export interface ManualRevisionRow {
  operatorId: string;
  id: string;
  manual: string;
  /** Empty: the whole manual. */
  task: string;
  revision: string;
  issuedOn: string;
  recordedBy: string | null;
  recordedAt: string;
}

export const ManualRevisionTable = new EntitySchema<ManualRevisionRow>({
  name: 'manual_revision',
  columns: {
    operatorId: key(),
    id: key(),
    manual: text(),
    task: text(),
    revision: text(),
    issuedOn: day(),
    recordedBy: id(nullable),
    recordedAt: instant(),
  },
  uniques: [{ name: 'manual_revision_once', columns: ['operatorId', 'manual', 'task', 'revision'] }],
  foreignKeys: [toOperator('manual_revision_operator'), toMember('manual_revision_recorded_by', 'recordedBy')],
});

/** A card that an authorised person held against a newer revision of its manual. */
export interface CardConfirmationRow {
  operatorId: string;
  id: string;
  aircraftType: string;
  card: string;
  /** The revision that the card cites. */
  wrote: string;
  against: string;
  /** The signature without names, as in a stored act. */
  signature: object;
  entryId: string;
}

export const CardConfirmationTable = new EntitySchema<CardConfirmationRow>({
  name: 'card_confirmation',
  columns: {
    operatorId: key(),
    id: key(),
    aircraftType: text(),
    card: text(),
    wrote: text(),
    against: text(),
    signature: json(),
    entryId: id(),
  },
  indices: [{ name: 'card_confirmation_of_card', columns: ['operatorId', 'aircraftType', 'card'] }],
  foreignKeys: [
    toOperator('card_confirmation_operator'),
    within('card_confirmation_entry', 'record_entry', 'entryId'),
  ],
});
