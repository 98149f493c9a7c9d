/** Where a table says other than the record. */
export interface Difference {
  table: string;
  id: string;
  /** The column, and within a stored act the place: `payload.limits.0.lastDay`. Null where the whole row is meant. */
  column: string | null;
  /** Null where the record has no such thing, and so for the table. */
  record: unknown;
  stored: unknown;
}

const THERE = 'is there';

/**
 * The columns that can be told from the record, and no others.
 * @param record by column; null when the record knows of no such row
 * @param stored the row; null when the table has none such
 */
export function differencesOfRow(
  table: string,
  id: string,
  record: object | null,
  stored: object | null,
): Difference[] {
  if (record === null || stored === null) {
    if (record === stored) return [];
    return [{ table, id, column: null, record: record && THERE, stored: stored && THERE }];
  }
  const row = stored as Record<string, unknown>;
  return Object.entries(record).flatMap(([column, value]) =>
    differing(column, value, row[column]).map((found) => ({ table, id, ...found })),
  );
}

type Found = Pick<Difference, 'column' | 'record' | 'stored'>;

function differing(column: string, record: unknown, stored: unknown): Found[] {
  if (isObject(record) && isObject(stored) && Array.isArray(record) === Array.isArray(stored)) {
    const keys = new Set([...Object.keys(record), ...Object.keys(stored)]);
    return [...keys].flatMap((key) => differing(`${column}.${key}`, record[key], stored[key]));
  }
  const [left, right] = [plain(column, record), plain(column, stored)];
  return left === right ? [] : [{ column, record: left, stored: right }];
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}

/** One instant is written in more than one way; a column that is empty and one that is absent say the same. */
function plain(column: string, value: unknown): unknown {
  if (value === undefined || value === null) return null;
  const isInstant = typeof value === 'string' && /(^at|At|Until)$/.test(column) && !Number.isNaN(Date.parse(value));
  return isInstant ? new Date(value).toISOString() : value;
}
