/** A list of planned flights as somebody pastes it: one line each under a line of names, with commas, semicolons or tabs. */
import { CsvError, parse } from 'csv-parse/sync';

export const COLUMNS = ['flight', 'from', 'to', 'departure', 'arrival', 'aircraft'] as const;
export type Column = (typeof COLUMNS)[number];

export const MOST_FLIGHTS = 500;

export interface PlannedLine {
  /** As an editor counts them. */
  line: number;
  number: string;
  from: string;
  to: string;
  offBlockAt: string;
  onBlockAt: string;
  registration: string;
}

export type Fault = string;

const NOT_UTF8 = 'it holds signs that are no text; save the file as CSV in UTF-8 and take it again';

interface Read {
  lines: PlannedLine[];
  faults: Fault[];
}

interface RawLine {
  record: string[];
  info: { lines: number };
}

/** Every line is looked at, so that all that is wrong is told at once. */
export function readPlan(text: string): Read {
  if (/[\0\ufffd]/.test(text)) return { lines: [], faults: [NOT_UTF8] };
  let raw: RawLine[];
  try {
    raw = parse(text, {
      bom: true,
      delimiter: [',', ';', '\t'],
      trim: true,
      info: true,
      skip_empty_lines: true,
      relax_column_count: true,
    }) as unknown as RawLine[];
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const { lines } = error as CsvError & { lines?: number };
    return { lines: [], faults: [`line ${lines ?? '?'}: the quotes do not match`] };
  }
  const [head, ...rest] = raw;
  if (head === undefined) return { lines: [], faults: ['there is nothing in it'] };
  const names = head.record.map((name) => name.toLowerCase());
  const faults = faultsOfHead(names, head.info.lines);
  if (faults.length > 0) return { lines: [], faults };
  if (rest.length === 0) return { lines: [], faults: ['there is no flight under the line of names'] };
  if (rest.length > MOST_FLIGHTS) {
    return {
      lines: [],
      faults: [`${rest.length} flights at once; ${MOST_FLIGHTS} are the most, so send it in parts`],
    };
  }
  const read = rest.map((one) => readLine(names, one));
  return { lines: read.flatMap(({ lines }) => lines), faults: read.flatMap((one) => one.faults) };
}

function faultsOfHead(names: readonly string[], line: number): Fault[] {
  const missing = COLUMNS.filter((column) => !names.includes(column));
  if (missing.length === COLUMNS.length)
    return [`line ${line}: the first line names the columns: ${COLUMNS.join(',')}`];
  const twice = COLUMNS.filter((column) => names.indexOf(column) !== names.lastIndexOf(column));
  const foreign = names.filter((name) => !(COLUMNS as readonly string[]).includes(name));
  return [
    ...missing.map((column) => `line ${line}: the column ${column} is missing`),
    ...twice.map((column) => `line ${line}: the column ${column} is named twice`),
    ...foreign.map((name) => `line ${line}: there is no column "${name.slice(0, 20)}"; take it out`),
  ];
}

function readLine(names: readonly string[], { record, info: { lines: line } }: RawLine): Read {
  if (record.length !== names.length) {
    return { lines: [], faults: [`line ${line}: it has ${record.length} fields where ${names.length} are named`] };
  }
  const faults: Fault[] = [];
  const field = (column: Column, shape: RegExp, asked: string): string => {
    const value = record[names.indexOf(column)] ?? '';
    if (!shape.test(value)) faults.push(`line ${line}, ${column}: ${said(value)}; write ${asked}`);
    return value;
  };
  const instant = (column: Column): string => {
    const value = record[names.indexOf(column)] ?? '';
    const at = instantIn(value);
    if (at !== null) return at;
    const next =
      instantIn(`${value}Z`) === null
        ? `write date and time in UTC as ${EXAMPLE}`
        : `where it is UTC, write it with a Z as ${EXAMPLE}`;
    const what = instantIn(`${value}Z`) === null ? said(value) : `"${value}" does not say of which zone it is`;
    faults.push(`line ${line}, ${column}: ${what}; ${next}`);
    return '';
  };
  const read: PlannedLine = {
    line,
    number: field('flight', /^[A-Z0-9][A-Z0-9 ]{0,11}$/, 'capital letters and digits as QX 107'),
    from: field('from', /^[A-Z0-9]{2,10}$/, 'the code of a station as QXA'),
    to: field('to', /^[A-Z0-9]{2,10}$/, 'the code of a station as QXA'),
    offBlockAt: instant('departure'),
    onBlockAt: instant('arrival'),
    registration: field('aircraft', /^[A-Z0-9-]{2,12}$/, 'the registration as Q-ABC'),
  };
  return faults.length > 0 ? { lines: [], faults } : { lines: [read], faults };
}

const EXAMPLE = '2026-12-01T05:30Z';

/** Only with Z: without it, it may be a spreadsheet's local time. What is no real minute is not guessed at either. */
function instantIn(value: string): string | null {
  const [, date, time] = /^(20\d\d-\d\d-\d\d)[T ](\d\d:\d\d)(?::00)?Z$/.exec(value) ?? [];
  if (date === undefined || time === undefined) return null;
  const at = new Date(`${date}T${time}:00.000Z`);
  return !Number.isNaN(at.getTime()) && at.toISOString() === `${date}T${time}:00.000Z` ? at.toISOString() : null;
}

function said(value: string): string {
  return value === '' ? 'nothing is there' : `"${value.slice(0, 30)}" is not readable`;
}
