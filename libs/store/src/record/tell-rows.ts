/**
 * Rows that no act tells of stand in the record all the same: as they are after each change, in an entry of the same
 * transaction. So what the tables say of the fleet, of people, plans, facts and settings can be built from the record.
 */
import { In } from 'typeorm';
import type { Transaction } from '../transaction.js';
import type { RecordOfOperator } from '../repositories/record.repository.js';
import { ROWS_TOLD, type ToldRow } from './told-row.js';
import { toldTable, toldTables, type ToldTable } from './told-tables.js';

const MOST_IN_AN_ENTRY = 200;
const MOST_IN_A_QUESTION = 1_000;
const UUID = /[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}/g;

/** @param changed keys by table */
export async function tellRows(
  tx: Transaction & { record: RecordOfOperator },
  changed: ReadonlyMap<string, ReadonlySet<string>>,
): Promise<void> {
  const rows: ToldRow[] = [];
  for (const [name, keys] of changed) {
    const told = toldTable(name);
    for (let from = 0; told && from < keys.size; from += MOST_IN_A_QUESTION) {
      rows.push(...(await rowsAsTold(tx, told, [...keys].slice(from, from + MOST_IN_A_QUESTION))));
    }
  }
  for (let from = 0; from < rows.length; from += MOST_IN_AN_ENTRY) {
    await tx.record.append({
      who: null,
      authorisation: null,
      organisation: null,
      what: ROWS_TOLD,
      aircraft: null,
      times: { enteredAt: new Date().toISOString() },
      payload: { rows: rows.slice(from, from + MOST_IN_AN_ENTRY) },
    });
  }
}

/**
 * Tells every row of an operator of whom none was told yet: of a database that is older than this part of the record. Once
 * anything was told, nothing is told but what is changed.
 */
export async function tellAllRows(tx: Transaction & { record: RecordOfOperator }): Promise<void> {
  if ((await tx.record.rowsTold('0', 1)).length > 0) return;
  const changed = new Map<string, Set<string>>();
  for (const { table, key } of toldTables) {
    const { name } = table.options;
    const keys = await tx.query<{ key: string }>(
      `select ${key.replace(/[A-Z]/, (letter) => `_${letter.toLowerCase()}`)}::text as key from ${name}
       where ${name === 'operator' ? 'id' : 'operator_id'} = $1`,
      [tx.operatorId],
    );
    changed.set(name, new Set(keys.map((one) => one.key)));
  }
  await tellRows(tx, changed);
}

/** Those of these rows that are there. */
export async function rowsAsTold(
  tx: Transaction,
  { table, key, without }: ToldTable,
  keys: readonly string[],
): Promise<ToldRow[]> {
  const { name } = table.options;
  const ofOperator = name === 'operator' ? {} : { operatorId: tx.operatorId };
  const found = await tx.manager.find(table, { where: { ...ofOperator, [key]: In([...keys]) } });
  const plain = (found as Record<string, unknown>[]).map((row) => ({
    table: name,
    key: String(row[key]),
    row: Object.fromEntries(Object.entries(row).filter(([column]) => !without.includes(column))),
  }));
  return withReferences(tx, plain);
}

/** Wherever the id of a person stands, the reference takes its place. */
async function withReferences(tx: Transaction, rows: readonly ToldRow[]): Promise<ToldRow[]> {
  const text = JSON.stringify(rows);
  const ids = [...new Set(text.match(UUID) ?? [])];
  if (ids.length === 0) return [...rows];
  const people = await tx.query<{ id: string; reference: string }>(
    'select id, reference from person where id = any($1)',
    [ids],
  );
  const references = new Map(people.map(({ id, reference }) => [id, reference]));
  return JSON.parse(text.replace(UUID, (id) => references.get(id) ?? id)) as ToldRow[];
}
