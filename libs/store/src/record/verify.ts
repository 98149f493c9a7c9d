import type { DataSource, EntityManager } from 'typeorm';
import { verifyRecord as verifyEntries, type Head, type RecordEntry } from '#record';
import { dataSource } from '../data-source.js';
import { copiesOf, type Copied } from './copies.js';

/** What checking one operator's record gave. */
export interface RecordFinding {
  operatorId: string;
  operatorCode: string;
  /** Sealed entries that were read. */
  entries: number;
  head: Head;
  /** Written and not yet sealed. */
  waiting: number;
  /** The first thing that does not fit; null when all fits. */
  misfit: { number: number | null; kind: string; sentence: string } | null;
}

interface Row {
  number: string;
  leaf: Buffer;
  canonical: Buffer | null;
  entry_id: string;
  operator_id: string;
  aircraft_id: string | null;
  who: string | null;
  what: string | null;
  entered_at: Date | null;
}

const pageSize = 1_000;

/**
 * Reads the record from its first entry to its newest and compares all of it: bytes with leaf, leaves with every head
 * that was kept, columns with bytes, numbers without a gap, and no entry that is neither sealed nor waiting. It holds
 * one page in memory, however long the record is, and reads one moment of the database throughout.
 * @param ownerUrl signs in as the owner of the tables
 * @param operator code or id; all operators when absent
 * @throws Error when there is no such operator
 */
export async function verifyRecord(ownerUrl: string, operator?: string): Promise<RecordFinding[]> {
  const source = await dataSource(ownerUrl, { connections: 1 }).initialize();
  try {
    const operators = await asked(source, operator);
    const findings: RecordFinding[] = [];
    for (const { id, code } of operators) findings.push(await verifyOf(source, id, code));
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
    const heads = await headsOf(manager, operatorId);
    const reading = new Reading(manager, operatorId);
    const check = await verifyEntries(reading.entries(), { heads });
    const waiting = await waitingOf(manager, operatorId);
    const head = check.fits ? check.head : (heads.at(-1) ?? { size: 0, root: '' });
    const misfit =
      reading.copied ??
      (check.fits ? null : { number: check.number, kind: check.misfit, sentence: check.sentence }) ??
      (await lost(manager, operatorId));
    return { operatorId, operatorCode, entries: reading.count, head, waiting, misfit };
  });
}

/** Heads are one for each batch: 16 bytes of a million entries. */
async function headsOf(manager: EntityManager, operatorId: string): Promise<Head[]> {
  const rows = await manager.query<{ size: string; root: string }[]>(
    'select size, root from tree_head where operator_id = $1 order by size',
    [operatorId],
  );
  return rows.map(({ size, root }) => ({ size: Number(size), root }));
}

/** Hands the entries on page by page, and keeps the first whose columns say other than its bytes. */
class Reading {
  count = 0;
  copied: Copied | null = null;

  constructor(
    private readonly manager: EntityManager,
    private readonly operatorId: string,
  ) {}

  async *entries(): AsyncGenerator<RecordEntry> {
    for (let after = 0, page = await this.page(after); page.length > 0; page = await this.page(after)) {
      for (const row of page) {
        after = Number(row.number);
        this.count += 1;
        this.copied ??= copiesOf(row);
        yield { number: after, bytes: row.canonical ?? Buffer.alloc(0), leafHash: row.leaf };
        if (this.copied) return;
      }
    }
  }

  private page(after: number): Promise<Row[]> {
    return this.manager.query<Row[]>(
      `select s.number, s.leaf, s.entry_id, s.operator_id, e.canonical, e.aircraft_id, e.who, e.what, e.entered_at
       from record_sealed s
       left join record_entry e on e.operator_id = s.operator_id and e.id = s.entry_id
       where s.operator_id = $1 and s.number > $2 order by s.number limit ${pageSize}`,
      [this.operatorId, after],
    );
  }
}

async function waitingOf(manager: EntityManager, operatorId: string): Promise<number> {
  const [row] = await manager.query<{ count: string }[]>(
    'select count(*) from record_pending where operator_id = $1',
    [operatorId],
  );
  return Number(row?.count ?? 0);
}

/** An entry that nobody will ever seal: taken off the waiting list by hand. */
async function lost(manager: EntityManager, operatorId: string) {
  const [row] = await manager.query<{ id: string }[]>(
    `select e.id from record_entry e
     where e.operator_id = $1
       and not exists (select from record_sealed s where s.operator_id = e.operator_id and s.entry_id = e.id)
       and not exists (select from record_pending p where p.operator_id = e.operator_id and p.entry_id = e.id)
     order by e.seq limit 1`,
    [operatorId],
  );
  if (!row) return null;
  return { number: null, kind: 'lost', sentence: `Entry ${row.id} has no number and is not waiting for one.` };
}
