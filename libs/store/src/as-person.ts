import type { DataSource } from 'typeorm';

/** One statement in which the database shows the rows of this person alone. */
export function asPerson<Row>(
  source: DataSource,
  personId: string,
  sql: string,
  values: readonly unknown[],
): Promise<Row[]> {
  return source.transaction(async (manager) => {
    await manager.query("select set_config('app.person', $1, true)", [personId]);
    return manager.query<Row[]>(sql, [...values]);
  });
}
