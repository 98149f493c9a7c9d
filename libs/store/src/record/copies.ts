import type { Misfit } from './waiting.js';

/** A sealed entry's columns, which repeat parts of its bytes so that it can be found. */
export interface Columns {
  number: string;
  entry_id: string;
  operator_id: string;
  canonical: Buffer | null;
  aircraft_id: string | null;
  who: string | null;
  what: string | null;
  entered_at: Date | null;
}

interface Said {
  id?: unknown;
  operator?: unknown;
  who?: unknown;
  what?: unknown;
  aircraft?: { id?: unknown } | null;
  times?: { enteredAt?: unknown };
}

/**
 * The first column that says other than the bytes, or null. Altered bytes that are no longer JSON are left to their
 * leaf hash, which says so better.
 */
export function differingCopy(row: Columns): Misfit | null {
  const number = Number(row.number);
  if (row.canonical === null) {
    return { number, kind: 'missing', sentence: `Entry ${number} was sealed and is no longer there.` };
  }
  const said = parse(row.canonical);
  if (said === undefined) return null;
  const pairs: [string, unknown, unknown][] = [
    ['id', row.entry_id, said.id],
    ['operator', row.operator_id, said.operator],
    ['who', row.who, said.who ?? null],
    ['what', row.what, said.what],
    ['aircraft', row.aircraft_id, said.aircraft?.id ?? null],
    ['enteredAt', row.entered_at?.getTime(), instantOf(said.times?.enteredAt)],
  ];
  const differing = pairs.find(([, column, bytes]) => column !== bytes);
  if (!differing) return null;
  const sentence = `The column "${differing[0]}" of entry ${number} says other than its bytes.`;
  return { number, kind: 'column', sentence };
}

function parse(bytes: Buffer): Said | undefined {
  try {
    return JSON.parse(bytes.toString('utf8')) as Said;
  } catch {
    return undefined;
  }
}

function instantOf(text: unknown): number {
  return Date.parse(String(text));
}
