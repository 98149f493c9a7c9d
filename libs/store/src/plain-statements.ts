/**
 * Plain statements for a table, made once from its columns: building them anew for each row costs more than the database
 * takes to carry them out. The text is always the same for the same columns, so that it is prepared once.
 */
import type { EntitySchema, EntitySchemaColumnOptions, ObjectLiteral } from 'typeorm';
import { PlainNames } from './rows/naming.js';

export interface Statement {
  sql: string;
  values: unknown[];
}

interface Column {
  property: string;
  name: string;
  /** As it stands in the list of what is selected. */
  selected: string;
  /** What the driver hands over, as the row has it. */
  read: (value: unknown) => unknown;
  /** What the row has, as the driver takes it. */
  write: (value: unknown) => unknown;
}

const names = new PlainNames();
const known = new WeakMap<object, ReadonlyMap<string, Column>>();
const selects = new WeakMap<object, string>();
const asIs = (value: unknown) => value;

/** Selects whole rows of a table. */
export function reading<Row extends ObjectLiteral>(
  table: EntitySchema<Row>,
): { sql: string; rowOf: (found: object) => Row } {
  const columns = [...columnsOf(table).values()];
  const made = selects.get(table);
  const sql = made ?? `select ${columns.map(({ selected }) => selected).join(', ')} from ${table.options.name}`;
  if (made === undefined) selects.set(table, sql);
  const rowOf = (found: object) => {
    const row = found as Record<string, unknown>;
    for (const { property, read } of columns) if (read !== asIs) row[property] = read(row[property]);
    return row as Row;
  };
  return { sql, rowOf };
}

/** Inserts one row; a column that is not given takes its default. */
export function inserting<Row extends ObjectLiteral>(table: EntitySchema<Row>, row: object): Statement {
  const given = givenOf(table, row);
  const list = given.map(({ column }) => column.name).join(', ');
  const places = given.map((_, index) => `$${index + 1}`).join(', ');
  return {
    sql: `insert into ${table.options.name} (${list}) values (${places})`,
    values: given.map(({ value }) => value),
  };
}

/** Changes the row that stands so. */
export function changing<Row extends ObjectLiteral>(
  table: EntitySchema<Row>,
  at: object,
  changes: object,
): Statement {
  const [where, set] = [givenOf(table, at), givenOf(table, changes)];
  const condition = where.map(({ column }, index) => `${column.name} = $${index + 1}`).join(' and ');
  const list = set.map(({ column }, index) => `${column.name} = $${where.length + index + 1}`).join(', ');
  return {
    sql: `update ${table.options.name} set ${list} where ${condition}`,
    values: [...where, ...set].map(({ value }) => value),
  };
}

function givenOf<Row extends ObjectLiteral>(table: EntitySchema<Row>, row: object) {
  const columns = columnsOf(table);
  return Object.entries(row).flatMap(([property, value]: [string, unknown]) => {
    const column = columns.get(property);
    return column === undefined || value === undefined ? [] : [{ column, value: column.write(value) }];
  });
}

function columnsOf<Row extends ObjectLiteral>(table: EntitySchema<Row>): ReadonlyMap<string, Column> {
  const made = known.get(table);
  if (made !== undefined) return made;
  const entries = Object.entries(table.options.columns) as [string, EntitySchemaColumnOptions][];
  const columns = new Map(entries.map(([property, options]) => [property, columnOf(property, options)]));
  known.set(table, columns);
  return columns;
}

function columnOf(property: string, { name, type, transformer, array }: EntitySchemaColumnOptions): Column {
  const stored = names.columnName(property, name);
  const own = transformer && !Array.isArray(transformer) ? transformer : null;
  const isDay = type === 'date';
  return {
    property,
    name: stored,
    selected: `${stored}${isDay ? '::text' : ''} as "${property}"`,
    read: own ? own.from : asIs,
    write: type === 'jsonb' && !array ? jsonOf : asIs,
  };
}

/** The driver would write a list as one of PostgreSQL's own. */
function jsonOf(value: unknown): unknown {
  return value === null ? null : JSON.stringify(value);
}
