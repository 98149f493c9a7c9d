import { EntitySchema } from 'typeorm';
import { day, id, instant, json, key, nullable, text } from './column.js';
import { toMember, toOperator, within } from './foreign-key.js';
import { type LoadedRevisionRow, loadedRevisionTable } from './loaded-revision.js';

/** One revision of a library of work cards for a type. */
export type CardLibraryRow = LoadedRevisionRow;

export const CardLibraryTable = loadedRevisionTable('card_library');

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
