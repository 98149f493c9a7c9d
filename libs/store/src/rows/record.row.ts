import { EntitySchema } from 'typeorm';
import { bytes, count, id, instant, key, nullable, text, texts } from './column.js';
import { toOperator, within } from './foreign-key.js';

/** One entry of the record. `canonical` is the entry; the other columns repeat parts of it so that it can be found. */
export interface RecordEntryRow {
  operatorId: string;
  id: string;
  /** The order of writing, with gaps. Never shown: the number of an entry is the one it is sealed under. */
  seq: number;
  aircraftId: string | null;
  /** The reference of the person; null when the program itself acted. */
  who: string | null;
  what: string;
  enteredAt: string;
  canonical: Buffer;
  leaf: Buffer;
}

export const RecordEntryTable = new EntitySchema<RecordEntryRow>({
  name: 'record_entry',
  columns: {
    operatorId: key(),
    id: key(),
    seq: count({ generated: 'increment', generatedIdentity: 'ALWAYS' } as object),
    aircraftId: id(nullable),
    who: text(nullable),
    what: text(),
    enteredAt: instant(),
    canonical: bytes(),
    leaf: bytes(),
  },
  indices: [
    { name: 'record_entry_of_aircraft', columns: ['operatorId', 'aircraftId', 'seq'] },
    { name: 'record_entry_backups', columns: ['operatorId', 'seq'], where: "what = 'backup.made'" },
  ],
  checks: [{ name: 'record_entry_leaf', expression: "leaf = sha256('\\x00'::bytea || canonical)" }],
  foreignKeys: [toOperator('record_entry_operator'), within('record_entry_aircraft', 'aircraft', 'aircraftId')],
});

/** That an entry was sealed: its number, gapless from 1 for each operator, and its leaf in the operator's tree. */
export interface RecordSealedRow {
  operatorId: string;
  number: number;
  entryId: string;
  leaf: Buffer;
  sealedAt: string;
}

export const RecordSealedTable = new EntitySchema<RecordSealedRow>({
  name: 'record_sealed',
  columns: {
    operatorId: key(),
    number: count({ primary: true }),
    entryId: id(),
    leaf: bytes(),
    sealedAt: instant({ default: () => 'clock_timestamp()' }),
  },
  uniques: [{ name: 'record_sealed_once', columns: ['operatorId', 'entryId'] }],
  checks: [{ name: 'record_sealed_number', expression: 'number > 0' }],
  foreignKeys: [within('record_sealed_entry', 'record_entry', 'entryId')],
});

/** A head of an operator's tree: the root over its first `size` entries. */
export interface TreeHeadRow {
  operatorId: string;
  size: number;
  /** 64 hex digits. */
  root: string;
  madeAt: string;
}

export const TreeHeadTable = new EntitySchema<TreeHeadRow>({
  name: 'tree_head',
  columns: {
    operatorId: key(),
    size: count({ primary: true }),
    root: text(),
    madeAt: instant({ default: () => 'clock_timestamp()' }),
  },
  checks: [{ name: 'tree_head_root', expression: "root ~ '^[0-9a-f]{64}$'" }],
  foreignKeys: [toOperator('tree_head_operator')],
});

/** What the sealer needs to go on: the roots of the full subtrees of the newest tree. */
export interface TreeFrontierRow {
  operatorId: string;
  size: number;
  hashes: string[];
}

export const TreeFrontierTable = new EntitySchema<TreeFrontierRow>({
  name: 'tree_frontier',
  columns: { operatorId: key(), size: count(), hashes: texts() },
  foreignKeys: [toOperator('tree_frontier_operator')],
});
