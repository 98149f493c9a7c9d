import type { EntityManager } from 'typeorm';

/** One table as it is backed up. */
export interface BackedUpTable {
  name: string;
  /** Columns that are written back; what the database computes by itself is not among them. */
  columns: string[];
  /** Read and written for one operator at a time: row-level security binds even the owner. */
  ofOperator: boolean;
}

interface Found extends BackedUpTable {
  forced: boolean;
  pointsAt: string[];
}

/**
 * Every table of the schema but the list of migrations, each after those that it points at.
 * @throws Error when a table would be read as empty: bound by row-level security and of no operator
 */
export async function tablesOfBackup(manager: EntityManager): Promise<BackedUpTable[]> {
  const found = await manager.query<Found[]>(`
    select c.relname as name, c.relforcerowsecurity as forced,
      array(select attname::text from pg_attribute a where a.attrelid = c.oid and attnum > 0
        and not attisdropped and attgenerated = '' order by attnum) as columns,
      c.relforcerowsecurity and exists (select from pg_attribute a
        where a.attrelid = c.oid and attname = 'operator_id' and not attisdropped) as "ofOperator",
      array(select distinct r.relname::text from pg_constraint k join pg_class r on r.oid = k.confrelid
        where k.conrelid = c.oid and k.contype = 'f' and k.confrelid <> c.oid) as "pointsAt"
    from pg_class c where c.relnamespace = 'public'::regnamespace and c.relkind = 'r' and c.relname <> 'migration'
    order by 1`);
  const hidden = found.find(({ name, forced, ofOperator }) => forced && !ofOperator && name !== 'operator');
  if (hidden) throw new Error(`The table ${hidden.name} cannot be read whole by its owner.`);
  return inOrder(found).map(({ name, columns, ofOperator }) => ({ name, columns, ofOperator }));
}

function inOrder(tables: readonly Found[]): Found[] {
  const placed: Found[] = [];
  let rest = [...tables];
  while (rest.length > 0) {
    const names = new Set(rest.map(({ name }) => name));
    const ready = rest.filter(({ pointsAt }) => !pointsAt.some((name) => names.has(name)));
    if (ready.length === 0) throw new Error(`The tables ${[...names].join(', ')} point at each other.`);
    placed.push(...ready);
    rest = rest.filter((table) => !ready.includes(table));
  }
  return placed;
}

/** Numbers that the database gives out by itself, by the column they are given to. */
export interface Counter {
  table: string;
  column: string;
  last: string;
}

export async function countersOf(manager: EntityManager): Promise<Counter[]> {
  const found = await manager.query<{ table: string; column: string; sequence: string }[]>(`
    select c.relname as table, a.attname as column, pg_get_serial_sequence(c.relname, a.attname) as sequence
    from pg_attribute a join pg_class c on c.oid = a.attrelid
    where c.relnamespace = 'public'::regnamespace and c.relkind = 'r' and c.relname <> 'migration'
      and a.attidentity <> '' order by 1, 2`);
  const counters: Counter[] = [];
  for (const { table, column, sequence } of found) {
    const [row] = await manager.query<{ last: string }[]>(
      `select case when is_called then last_value else 0 end as last from ${sequence}`,
    );
    counters.push({ table, column, last: row?.last ?? '0' });
  }
  return counters;
}

export function quoted(name: string): string {
  return `"${name.replaceAll('"', '""')}"`;
}
