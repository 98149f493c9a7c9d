/** Rows that the record tells as they stood after each change, held against the tables: a page at a time. */
import { rowsAsTold, type Tx, type ToldRow, type ToldTable, toldTables } from '#store';
import type { Compared } from './compared.js';
import { differencesOfRow } from './difference.js';

const PAGE = 200;

/** Run it at one moment: what is changed meanwhile would differ. */
export async function compareRows(tx: Tx, compared: Compared): Promise<void> {
  const lastTold = await lastEntries(tx);
  const erased = await tx.people.erasedOnes();
  for (const told of toldTables) await compareTable(tx, told, lastTold, erased, compared);
  for (const place of lastTold.keys()) {
    const [table = '', key = ''] = place.split('/');
    compared.rows += 1;
    compared.differences.push({ table, id: key, column: null, record: 'is there', stored: null });
  }
}

/** For each row, by table and key, the entry that told it last. Only their ids are held. */
async function lastEntries(tx: Tx): Promise<Map<string, string>> {
  const last = new Map<string, string>();
  for (let seq = '0'; ;) {
    const page = await tx.record.rowsTold(seq, PAGE);
    for (const { id, rows } of page) for (const { table, key } of rows) last.set(`${table}/${key}`, id);
    const end = page.at(-1);
    if (!end || page.length < PAGE) return last;
    ({ seq } = end);
  }
}

/** Takes from `lastTold` what it finds. */
async function compareTable(
  tx: Tx,
  told: ToldTable,
  lastTold: Map<string, string>,
  erased: ReadonlySet<string>,
  compared: Compared,
): Promise<void> {
  const table = told.table.options.name;
  for (let after: string | null = null; ;) {
    const keys: string[] = await tx.rowsForRecord.keysOf(told, after, PAGE);
    const stored = await rowsAsTold(tx, told, keys);
    const places = stored.map(({ key }) => `${table}/${key}`);
    const images = await imagesOf(tx, places, lastTold);
    for (const { key, row } of stored) {
      const place = `${table}/${key}`;
      lastTold.delete(place);
      compared.rows += 1;
      if (belongsToErased(row, erased)) continue;
      compared.differences.push(...differencesOfRow(table, key, images.get(place) ?? null, row));
    }
    if (keys.length < PAGE) return;
    after = keys.at(-1) ?? null;
  }
}

/** Where somebody wanted to be told ends with the erasure, in every operator at once. */
function belongsToErased(row: Record<string, unknown>, erased: ReadonlySet<string>): boolean {
  return 'personId' in row && ('everywhere' in row || 'forAll' in row) && erased.has(String(row['personId']));
}

async function imagesOf(tx: Tx, places: readonly string[], lastTold: ReadonlyMap<string, string>) {
  const ids = [...new Set(places.flatMap((place) => lastTold.get(place) ?? []))];
  const entries = await tx.record.rowsOf(ids);
  const images = new Map<string, ToldRow['row']>();
  for (const [id, rows] of entries) {
    for (const { table, key, row } of rows) {
      if (lastTold.get(`${table}/${key}`) === id) images.set(`${table}/${key}`, row);
    }
  }
  return images;
}
