/** The rows that one deferral wrote, and the same again under new keys, as statements for plain `pg`, updates included. */
import { createHash, randomUUID } from 'node:crypto';

const TABLES = ['record_entry', 'defect_act', 'signature', 'idempotency'];

/** @returns by table, the rows that stand for one deferral, as the database holds them */
export async function rowsOfOneDeferral(pool, operator, defectId) {
  const connection = await pool.connect();
  try {
    await connection.query('begin');
    await connection.query("select set_config('app.operator', $1, true)", [operator]);
    const ask = async (sql, values) => (await connection.query(sql, values)).rows;
    const acts = await ask("select * from defect_act where defect_id = $1 and kind = 'deferred'", [defectId]);
    const entryId = acts[0].entry_id;
    const rows = {
      record_entry: await ask('select * from record_entry where id = $1', [entryId]),
      defect_act: acts,
      signature: await ask('select * from signature where entry_id = $1', [entryId]),
      idempotency: await ask('select * from idempotency where body like $1 order by created_at desc limit 1', [
        `%${defectId}%`,
      ]),
    };
    await connection.query('commit');
    return rows;
  } finally {
    connection.release();
  }
}

let seq = 1_000_000;

/** The statements of one deferral of a defect: the rows under new keys, and the two rows that it changes. */
export function statementsOf(rows, defect) {
  const entry = { id: randomUUID() };
  return [
    ...TABLES.flatMap((table) => rows[table].map((row) => insert(table, renewed(table, row, entry, defect)))),
    {
      text: 'update defect set state = state, basis = basis, version = version + 1 where id = $1',
      values: [defect.id],
    },
    { text: 'update aircraft set version = version + 1 where id = $1', values: [defect.aircraft] },
  ];
}

function renewed(table, row, entry, defect) {
  if (table === 'record_entry') {
    const canonical = Buffer.concat([row.canonical, Buffer.from(entry.id)]);
    const leaf = createHash('sha256').update(Buffer.of(0)).update(canonical).digest();
    const { seq: _made, ...rest } = row;
    return { ...rest, id: entry.id, canonical, leaf };
  }
  if (table === 'defect_act')
    return { ...row, id: randomUUID(), defect_id: defect.id, seq: (seq += 1), entry_id: entry.id };
  if (table === 'signature') return { ...row, id: randomUUID(), entry_id: entry.id };
  return { ...row, key: randomUUID() };
}

function insert(table, row) {
  const columns = Object.keys(row);
  const values = Object.values(row).map((value) =>
    value !== null &&
    typeof value === 'object' &&
    !Buffer.isBuffer(value) &&
    !(value instanceof Date) &&
    !Array.isArray(value)
      ? JSON.stringify(value)
      : value,
  );
  const places = columns.map((_, index) => `$${index + 1}`).join(', ');
  return { text: `insert into ${table} (${columns.join(', ')}) values (${places})`, values };
}
