import { EntitySchema } from 'typeorm';
import { id, instant, key, nullable, text, whole } from './column.js';
import { toOperator, within } from './foreign-key.js';

/** A file of movement messages that was taken out of a watched folder, or refused as a whole. Never changed. */
export interface MovementFileRow {
  operatorId: string;
  id: string;
  /** Of its bytes, as 64 hex digits. */
  sha256: string;
  /** What it was called. */
  name: string;
  bytes: number;
  takenAt: string;
  /** Null when it was refused, and when it brought nothing that was not known. */
  deliveryId: string | null;
  refusedBecause: string | null;
}

export const MovementFileTable = new EntitySchema<MovementFileRow>({
  name: 'movement_file',
  columns: {
    operatorId: key(),
    id: key(),
    sha256: text(),
    name: text(),
    bytes: whole(),
    takenAt: instant(),
    deliveryId: id(nullable),
    refusedBecause: text(nullable),
  },
  uniques: [{ name: 'movement_file_once', columns: ['operatorId', 'sha256'] }],
  checks: [{ name: 'movement_file_sha256', expression: "sha256 ~ '^[0-9a-f]{64}$'" }],
  foreignKeys: [
    toOperator('movement_file_operator'),
    within('movement_file_delivery', 'movement_delivery', 'deliveryId'),
  ],
});
