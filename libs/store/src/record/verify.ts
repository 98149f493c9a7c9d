import type { DataSource } from 'typeorm';
import type { Head } from '#record';
import { dataSource } from '../data-source.js';
import { readThrough } from './read-through.js';
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
  /** Null when all fits. */
  misfit: Misfit | null;
}

/**
 * Reads the record from its first entry to its newest and compares all of it: bytes with leaf, leaves with every head
 * that was kept, columns with bytes, numbers without a gap, no entry without a head over it, none neither sealed nor
 * waiting. It holds one page in memory, however long the record is, and reads one moment of the database throughout.
 * @param ownerUrl signs in as the owner of the tables
 * @param operator code or id; all operators when absent
 * @throws Error when there is no such operator
 */
export async function verifyRecord(ownerUrl: string, operator?: string): Promise<RecordFinding[]> {
  const source = await dataSource(ownerUrl, { connections: 1 }).initialize();
  try {
    const findings: RecordFinding[] = [];
    for (const { id, code } of await asked(source, operator)) findings.push(await verifyOf(source, id, code));
    return findings;
  } finally {
    await source.destroy();
  }
}

async function asked(source: DataSource, operator?: string): Promise<{ id: string; code: string }[]> {
  const all = await source.query<{ id: string; code: string }[]>('select id, code from operator order by code');
  if (operator === undefined) return all;
  const found = all.filter(({ id, code }) => id === operator || code === operator);
  if (found.length === 0) throw new Error(`There is no operator ${JSON.stringify(operator)}.`);
  return found;
}

function verifyOf(source: DataSource, operatorId: string, operatorCode: string): Promise<RecordFinding> {
  return source.transaction('REPEATABLE READ', async (manager) => {
    await manager.query("select set_config('app.operator', $1, true)", [operatorId]);
    const { entries, head, misfit } = await readThrough(manager, operatorId);
    const waiting = await waitingEntries(manager, operatorId);
    return {
      operatorId,
      operatorCode,
      entries,
      head,
      waiting,
      misfit: misfit ?? (await lostEntry(manager, operatorId)),
    };
  });
}
