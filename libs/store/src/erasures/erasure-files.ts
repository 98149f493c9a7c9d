import { join } from 'node:path';
import type { DataSource, EntityManager } from 'typeorm';
import { type Erased, signErasures } from '#record';
import { plainCode, writeOnce } from '../record/head-files.js';
import type { HeadKey } from '../record/head-key.js';
import { isoText } from '../rows/column.js';

export const ERASURES_ENDING = '.erasures.json';

/**
 * Writes each operator's list of erasures into the folder where the signed heads go: a new file whenever somebody was
 * erased, an empty one before that, so that a list that is missing is seen to be missing.
 */
export async function writeErasureLists(
  source: DataSource,
  { folder, key, now }: { folder: string; key: HeadKey; now: string },
): Promise<void> {
  const operators = await source.query<{ id: string; code: string }[]>('select id, code from recorded_operators()');
  for (const { id: log, code: operator } of operators) {
    const people = await source.transaction((manager) => erasedFor(manager, log));
    const list = signErasures({ log, operator, signedAt: now, people }, key.privateKey);
    // The end of the id: a database that was made anew under the same code has a list of its own.
    const name = `${plainCode(operator)}-${log.slice(-8)}-${String(people.length).padStart(6, '0')}${ERASURES_ENDING}`;
    await writeOnce(join(folder, name), `${JSON.stringify(list, null, 2)}\n`);
  }
}

/** In the order in which it was done. */
async function erasedFor(manager: EntityManager, log: string): Promise<Erased[]> {
  await manager.query("select set_config('app.operator', $1, true)", [log]);
  const rows = await manager.query<{ person: string; reference: string; at: Date; by: string | null }[]>(
    `select person_id as person, reference, erased_at as at, erased_by as by from erasure
     where operator_id = $1 order by erased_at, person_id`,
    [log],
  );
  return rows.map(({ at, ...row }) => ({ ...row, erasedAt: isoText(at) as string }));
}
