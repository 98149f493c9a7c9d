import type { KeyObject } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { dataSource } from '../data-source.js';
import { type CheckedErasures, checkErasures, type ErasureFile } from '../erasures/check-erasures.js';
import { type ErasedAgain, eraseChecked } from '../erasures/erase-again.js';
import { migrate } from '../migrate.js';
import { migrations } from '../migrations/index.js';
import { type RecordFinding, verifyIn } from '../record/verify.js';
import { ensureAppRole } from '../roles/app-role.js';
import { type BackupHead, backupLines, type BackupPart, checkedHead } from './backup-file.js';
import { plainText } from './make-backup.js';
import { type BackedUpTable, quoted, tablesOfBackup } from './tables-of-backup.js';

/** Why a backup cannot be restored here, in one sentence. */
export class CannotRestore extends Error {
  override readonly name = 'CannotRestore';
}

export interface Restored {
  madeAt: string;
  rows: number;
  records: RecordFinding[];
  /** What the lists of erasures that were given did; one for each operator that had one. */
  erasures: ErasedAgain[];
}

/** Who was erased, perhaps after the backup was made. */
export interface ErasuresGiven {
  files: readonly ErasureFile[];
  /** Beside those with which heads in the backup were signed. */
  keys: readonly KeyObject[];
  /** ISO 8601. */
  now: string;
}

const chunk = 500;

/**
 * Puts a backup into an empty database: all of it, with every record checked before anything counts, or nothing. Whoever
 * is on a list of erasures is erased again before it returns.
 * @param ownerUrl signs in as the role that owns the tables, or will
 * @throws BackupDamaged before the database is touched
 * @throws CannotRestore when the database holds something, or the backup is of another state of the schema
 * @throws ErasuresRefused when a list is not of this record; nothing is restored then
 */
export async function restoreBackup(
  ownerUrl: string,
  path: string,
  { files, keys, now }: ErasuresGiven = { files: [], keys: [], now: '' },
): Promise<Restored> {
  const head = await checkedHead(path);
  const level = levelOf(head);
  await ensureAppRole(ownerUrl);
  await refuseUnlessEmpty(ownerUrl, level);
  await migrate(ownerUrl, { upTo: level });
  let checked: CheckedErasures[] = [];
  const restored = await inOneTransaction(ownerUrl, async (manager) => {
    const all = await restoreAll(manager, path, head);
    checked = await checkErasures(manager, files, keys);
    return all;
  });
  await migrate(ownerUrl);
  return { ...restored, erasures: await eraseChecked(ownerUrl, checked, now) };
}

/** How many of our migrations the backup stands on. */
function levelOf({ migrations: theirs }: BackupHead): number {
  const ours = [...migrations].map(({ name }) => name).toSorted(byTimestamp);
  const strange = theirs.find((name, index) => ours[index] !== name);
  if (strange === undefined) return theirs.length;
  throw new CannotRestore(`the backup stands on the migration ${strange}, which this program does not have there`);
}

const byTimestamp = (one: string, other: string): number => Number(one.slice(-13)) - Number(other.slice(-13));

async function inOneTransaction<T>(ownerUrl: string, work: (manager: EntityManager) => Promise<T>): Promise<T> {
  const source = await dataSource(ownerUrl, { connections: 1 }).initialize();
  try {
    return await source.transaction(work);
  } finally {
    await source.destroy();
  }
}

/** Nothing is ever put beside or over what is there. */
function refuseUnlessEmpty(ownerUrl: string, level: number): Promise<void> {
  return inOneTransaction(ownerUrl, async (manager) => {
    const [there] = await manager.query<{ migrated: string | null }[]>(
      "select to_regclass('public.migration')::text as migrated",
    );
    if (!there?.migrated) return;
    const [ran] = await manager.query<{ count: string }[]>('select count(*) from migration');
    if (Number(ran?.count) > level) {
      throw new CannotRestore('the database has a newer schema than the backup; give one without tables');
    }
    if (Number(ran?.count) === 0) return;
    for (const table of ['operator', 'person']) {
      const [found] = await manager.query<{ count: string }[]>(`select count(*) from ${table}`);
      if (Number(found?.count) > 0) throw new CannotRestore('the database is not empty');
    }
  });
}

async function restoreAll(
  manager: EntityManager,
  path: string,
  head: BackupHead,
): Promise<Omit<Restored, 'erasures'>> {
  await manager.query(plainText);
  const tables = new Map((await tablesOfBackup(manager)).map((table) => [table.name, table]));
  for (const name of tables.keys()) await manager.query(`alter table ${quoted(name)} disable trigger user`);
  const rows = await putBack(manager, path, tables);
  for (const name of tables.keys()) await manager.query(`alter table ${quoted(name)} enable trigger user`);
  for (const { table, column, last } of head.counters) {
    await manager.query('select setval(pg_get_serial_sequence($1, $2), greatest($3::bigint, 1), $3::bigint > 0)', [
      table,
      column,
      last,
    ]);
  }
  const records: RecordFinding[] = [];
  for (const { id, code } of head.operators) records.push(await verifyIn(manager, id, code));
  const broken = records.find(({ misfit }) => misfit !== null);
  if (broken)
    throw new CannotRestore(`the record of ${broken.operatorCode} in it does not fit: ${broken.misfit?.sentence}`);
  return { madeAt: head.madeAt, rows, records };
}

async function putBack(
  manager: EntityManager,
  path: string,
  tables: ReadonlyMap<string, BackedUpTable>,
): Promise<number> {
  let part: BackupPart | null = null;
  let waiting: string[] = [];
  let rows = 0;
  const flush = async (): Promise<void> => {
    if (part !== null && waiting.length > 0) rows += await insert(manager, part, tables, waiting);
    waiting = [];
  };
  for await (const line of backupLines(path)) {
    if ('part' in line) {
      await flush();
      ({ part } = line);
      await manager.query("select set_config('app.operator', $1, true)", [part.operator ?? '']);
    } else if ('row' in line) {
      waiting.push(line.row);
      if (waiting.length === chunk) await flush();
    }
  }
  await flush();
  return rows;
}

async function insert(
  manager: EntityManager,
  { table: name }: BackupPart,
  tables: ReadonlyMap<string, BackedUpTable>,
  rows: readonly string[],
): Promise<number> {
  const table = tables.get(name);
  if (!table) throw new CannotRestore(`the backup holds a table ${name}, which this program does not know`);
  const columns = table.columns.map(quoted).join(', ');
  if (name === 'operator') return insertOperators(manager, table, rows);
  await manager.query(
    `insert into ${quoted(name)} (${columns}) overriding system value
     select ${table.columns.map((column) => `(one.whole).${quoted(column)}`).join(', ')}
     from (select given.row::${quoted(name)} as whole from unnest($1::text[]) with ordinality given (row, place)
       order by place offset 0) one`,
    [rows],
  );
  return rows.length;
}

/** Its row-level rule lets an operator be entered only while it is the one that is set. */
async function insertOperators(
  manager: EntityManager,
  { columns }: BackedUpTable,
  rows: readonly string[],
): Promise<number> {
  const names = columns.map(quoted).join(', ');
  for (const row of rows) {
    const [one] = await manager.query<{ id: string }[]>('select ($1::text::operator).id as id', [row]);
    await manager.query("select set_config('app.operator', $1, true)", [one?.id]);
    await manager.query(
      `insert into operator (${names}) select (one.whole).* from (select $1::text::operator as whole) one`,
      [row],
    );
  }
  return rows.length;
}
