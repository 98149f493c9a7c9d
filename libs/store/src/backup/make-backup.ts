import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { rename, rm, stat } from 'node:fs/promises';
import { pipeline } from 'node:stream/promises';
import type { EntityManager } from 'typeorm';
import { dataSource } from '../data-source.js';
import { openStore } from '../store.js';
import { backupFormat, BackupWriter, type BackupEnd } from './backup-file.js';
import { type BackedUpTable, countersOf, quoted, tablesOfBackup } from './tables-of-backup.js';

export interface BackupMade extends BackupEnd {
  madeAt: string;
  bytes: number;
  /** SHA-256 of the file as it lies there. */
  fileSha256: string;
  operators: string[];
}

const fetched = 1_000;

/** How rows are written out as text and read back: the same on every server, whatever its own settings. */
export const plainText =
  "set local timezone = 'UTC'; set local datestyle = 'ISO, YMD'; set local bytea_output = 'hex'";

/**
 * Writes everything that the database holds into one file, as it stood at one moment, while the servers go on working.
 * That it was made is then recorded for each operator, so that anybody can see how old the last one is. Jobs that wait to
 * be carried out are not in it.
 * @param ownerUrl signs in as the owner of the tables
 * @param path a file that is not there yet
 * @param now ISO 8601
 */
export async function makeBackup(ownerUrl: string, path: string, now: string): Promise<BackupMade> {
  const making = `${path}.making`;
  const writer = new BackupWriter(making);
  const source = await dataSource(ownerUrl, { connections: 1 }).initialize();
  try {
    const operators = await source.transaction('REPEATABLE READ', (manager) => writeAll(manager, writer, now));
    const end = await writer.end();
    const { size: bytes } = await stat(making);
    const made = { ...end, madeAt: now, bytes, fileSha256: await sha256Of(making), operators: codes(operators) };
    await rename(making, path);
    await recordIt(ownerUrl, operators, made);
    return made;
  } catch (error) {
    await writer.abandon();
    await rm(making, { force: true });
    throw error;
  } finally {
    await source.destroy();
  }
}

interface Operator {
  id: string;
  code: string;
}

const codes = (operators: readonly Operator[]): string[] => operators.map(({ code }) => code);

async function writeAll(manager: EntityManager, writer: BackupWriter, madeAt: string): Promise<Operator[]> {
  await manager.query(plainText);
  const migrations = await manager.query<{ name: string }[]>('select name from migration order by "timestamp"');
  const operators = await manager.query<Operator[]>('select id, code from recorded_operators()');
  const counters = await countersOf(manager);
  const names = migrations.map(({ name }) => name);
  await writer.put({ head: { format: backupFormat, madeAt, migrations: names, operators, counters } });
  for (const table of await tablesOfBackup(manager)) {
    if (!table.ofOperator) await writeRows(manager, writer, table, null);
    else for (const { id } of operators) await writeRows(manager, writer, table, id);
  }
  return operators;
}

async function writeRows(
  manager: EntityManager,
  writer: BackupWriter,
  { name, columns, ofOperator }: BackedUpTable,
  operator: string | null,
): Promise<void> {
  await writer.put({ part: { table: name, operator } });
  await manager.query("select set_config('app.operator', $1, true)", [operator ?? '']);
  const row = `row(${columns.map(quoted).join(', ')})::text`;
  const where = ofOperator ? `where operator_id = '${operator}'` : '';
  await manager.query(`declare backup no scroll cursor for select ${row} as row from ${quoted(name)} ${where}`);
  for (;;) {
    const rows = await manager.query<{ row: string }[]>(`fetch ${fetched} from backup`);
    for (const one of rows) await writer.put({ row: one.row });
    if (rows.length < fetched) break;
  }
  await manager.query('close backup');
}

async function sha256Of(path: string): Promise<string> {
  const hash = createHash('sha256');
  await pipeline(createReadStream(path), hash);
  return hash.digest('hex');
}

async function recordIt(ownerUrl: string, operators: readonly Operator[], made: BackupMade): Promise<void> {
  const store = await openStore(ownerUrl, { connections: 1 });
  try {
    for (const { id } of operators) {
      await store.withOperator(id, null, (tx) =>
        tx.record.append({
          who: null,
          authorisation: null,
          organisation: null,
          what: 'backup.made',
          aircraft: null,
          times: { enteredAt: made.madeAt },
          payload: { sha256: made.fileSha256, bytes: made.bytes, rows: made.rows },
        }),
      );
    }
  } finally {
    await store.close();
  }
}
