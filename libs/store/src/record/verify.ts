import type { DataSource, EntityManager } from 'typeorm';
import type { Head } from '#record';
import { dataSource } from '../data-source.js';
import { isoText } from '../rows/column.js';
import { readThrough } from './read-through.js';
import { alteredSignedHead } from './signed-heads-fit.js';
import { UNSAVED_SINCE } from './unsaved-since.js';
import { lostEntry, waitingEntries, type Misfit } from './waiting.js';

/** What checking one operator's record gave. */
export interface RecordFinding {
  operatorId: string;
  operatorCode: string;
  /** Sealed entries that were read. */
  entries: number;
  /** The head over what was read and fits. */
  head: Head;
  /** Written and not yet sealed. */
  waiting: number;
  /** When the last backup was made that was recorded; null when none was. */
  lastBackupAt: string | null;
  /** When the first entry was made that stands in no backup; null where all are saved. ISO 8601. */
  unsavedSince: string | null;
  /** Null when all fits. */
  misfit: Misfit | null;
}

/**
 * Reads the record from its first entry to its newest and compares all of it: bytes with leaf, leaves with every head
 * that was kept, columns with bytes, numbers without a gap, no entry without a head over it, none neither sealed nor
 * waiting, signed heads with their signatures. It holds one page in memory, however long the record is, and reads one moment of the database throughout.
 * @param url signs in as the owner of the tables or as `proviso_app`
 * @param operator code or id; all operators when absent
 * @throws Error when there is no such operator
 */
export async function verifyRecord(url: string, operator?: string): Promise<RecordFinding[]> {
  const source = await dataSource(url, { connections: 1 }).initialize();
  try {
    const findings: RecordFinding[] = [];
    for (const { id, code } of await asked(source, operator)) findings.push(await verifyOf(source, id, code));
    return findings;
  } finally {
    await source.destroy();
  }
}

/** Every operator that has a record, by code; as the owner of the tables or as `proviso_app`. */
export async function recordedOperators(url: string): Promise<{ id: string; code: string }[]> {
  const source = await dataSource(url, { connections: 1 }).initialize();
  try {
    return await source.query<{ id: string; code: string }[]>('select id, code from recorded_operators()');
  } finally {
    await source.destroy();
  }
}

async function asked(source: DataSource, operator?: string): Promise<{ id: string; code: string }[]> {
  const all = await source.query<{ id: string; code: string }[]>('select id, code from recorded_operators()');
  if (operator === undefined) return all;
  const found = all.filter(({ id, code }) => id === operator || code === operator);
  if (found.length === 0) throw new Error(`There is no operator ${JSON.stringify(operator)}.`);
  return found;
}

function verifyOf(source: DataSource, operatorId: string, operatorCode: string): Promise<RecordFinding> {
  return source.transaction('REPEATABLE READ', (manager) => verifyIn(manager, operatorId, operatorCode));
}

/** The same in a transaction that is already open, seeing what that one sees. */
export async function verifyIn(
  manager: EntityManager,
  operatorId: string,
  operatorCode: string,
): Promise<RecordFinding> {
  await manager.query("select set_config('app.operator', $1, true)", [operatorId]);
  const { entries, head, misfit } = await readThrough(manager, operatorId);
  const waiting = await waitingEntries(manager);
  return {
    operatorId,
    operatorCode,
    entries,
    head,
    waiting,
    lastBackupAt: await lastBackup(manager, operatorId),
    unsavedSince: await unsavedSince(manager, operatorId),
    misfit: misfit ?? (await lostEntry(manager, operatorId)) ?? (await alteredSignedHead(manager, operatorId)),
  };
}

async function unsavedSince(manager: EntityManager, operatorId: string): Promise<string | null> {
  const [row] = await manager.query<{ at: Date }[]>(UNSAVED_SINCE, [operatorId]);
  return isoText(row?.at ?? null);
}

async function lastBackup(manager: EntityManager, operatorId: string): Promise<string | null> {
  const [row] = await manager.query<{ at: Date }[]>(
    `select entered_at as at from record_entry
     where operator_id = $1 and what = 'backup.made' order by seq desc limit 1`,
    [operatorId],
  );
  return isoText(row?.at ?? null);
}
