import pg, { type QueryResult } from 'pg';

/** By what the driver reads the rows of a result. */
interface Description {
  fields: unknown[];
  _parsers?: unknown[];
  _prebuiltEmptyResultObject: object | null;
}

/** What the driver's own class has, and its types leave out. */
interface DriverQuery {
  name?: string;
  _result: Description;
  _accumulateRows?: boolean;
  prepare(connection: object): void;
  handleCommandComplete(message: object, connection: object): void;
}

export type Answer = (error: Error | null, result: QueryResult) => void;

const Driver = pg.Query as unknown as new (text: string, values: unknown[], answer: Answer) => DriverQuery;

/** Of what was prepared on a connection, by the name it was prepared under: it stays the same as long as that. */
const described = new WeakMap<object, Map<string, Description>>();

/**
 * A named question whose columns the database describes once for each connection. The driver asks for that each time,
 * which for most questions is longer than the answer.
 */
export class DescribedOnce extends Driver {
  constructor(
    override readonly name: string,
    text: string,
    values: unknown[],
    answer: Answer,
  ) {
    super(text, values, answer);
  }

  override prepare(connection: object): void {
    const known = described.get(connection)?.get(this.name);
    if (known === undefined) return super.prepare(connection);
    Object.assign(this._result, known);
    this._accumulateRows = true;
    super.prepare(Object.create(connection, NOT_DESCRIBING));
  }

  override handleCommandComplete(message: object, connection: object): void {
    super.handleCommandComplete(message, connection);
    const known = described.get(connection) ?? new Map<string, Description>();
    if (known.has(this.name)) return;
    const { fields, _parsers, _prebuiltEmptyResultObject } = this._result;
    described.set(connection, known.set(this.name, { fields, _parsers, _prebuiltEmptyResultObject }));
  }
}

/** The same connection, which sends all but the question for the columns. */
const NOT_DESCRIBING = { describe: { value: () => undefined } };
