import type { ClientBase } from 'pg';
import { type EntityManager, type EntitySchema, type ObjectLiteral, QueryFailedError } from 'typeorm';
import { newId } from './ids.js';
import { changing, inserting, reading } from './plain-statements.js';
import { StaleVersion } from './stale-version.js';

/** The connection that a transaction of TypeORM holds. */
export async function connectionOf({ queryRunner }: EntityManager): Promise<ClientBase> {
  if (!queryRunner) throw new Error('A transaction holds a connection; this one holds none.');
  return (await queryRunner.connect()) as ClientBase;
}

/**
 * What every repository stands on: one open transaction, in which the database shows the rows of one operator.
 * Repositories name the operator in every question all the same; the database's own rule is the second lock.
 */
export class Transaction {
  constructor(
    readonly manager: EntityManager,
    private readonly connection: ClientBase,
    readonly operatorId: string,
    /** Who acts; null when the program itself does. */
    readonly personId: string | null,
  ) {}

  private readonly answers = new Map<string, Promise<unknown>>();
  private isOver = false;

  /**
   * Asks once in this transaction for what an act reads again and again: the operator, its people, the MEL in force.
   * Anything this transaction writes clears what was remembered.
   */
  remembered<T>(key: string, ask: () => Promise<T>): Promise<T> {
    const known = this.answers.get(key) as Promise<T> | undefined;
    const answer = known ?? ask();
    if (known === undefined) this.answers.set(key, answer);
    return answer;
  }

  /** Ask anew from now on. */
  forget(): void {
    this.answers.clear();
  }

  private readonly changed = new Map<string, Set<string>>();

  /** Says that a row was written: those that the record tells are told before the transaction ends. */
  wrote({ options: { name } }: { options: { name: string } }, ...keys: readonly string[]): void {
    const known = this.changed.get(name) ?? new Set();
    for (const one of keys) known.add(one);
    this.changed.set(name, known);
  }

  /** Keys by table of what was written so far. */
  get written(): ReadonlyMap<string, ReadonlySet<string>> {
    return this.changed;
  }

  /**
   * Sent at once, behind everything that was asked in this way before: what is asked next to a lock, after it, is read
   * once the lock is held. What the manager is asked goes out later in the same turn, or in a later one.
   */
  async query<Row>(sql: string, values: readonly unknown[] = []): Promise<Row[]> {
    return (await this.ask<Row>(sql, values)).rows;
  }

  /** The rows of a table where something holds, in the words of SQL; `$1` is the operator. */
  async read<Row extends ObjectLiteral>(
    table: EntitySchema<Row>,
    where: string,
    values: readonly unknown[] = [],
  ): Promise<Row[]> {
    const { sql, rowOf } = reading(table);
    const { rows } = await this.ask<object>(`${sql} where operator_id = $1 and ${where}`, [
      this.operatorId,
      ...values,
    ]);
    return rows.map(rowOf);
  }

  /** Inserts a row of this operator and gives its key. */
  async insert<Row extends ObjectLiteral>(table: EntitySchema<Row>, row: object): Promise<string> {
    const id = (row as { id?: string }).id ?? newId();
    const { sql, values } = inserting(table, { ...row, id, operatorId: this.operatorId });
    await this.ask(sql, values);
    this.wrote(table, id);
    return id;
  }

  /**
   * Changes a row only if it still stands at the version that was seen, and puts it one up. Rows are never saved whole:
   * that would write back whatever somebody else changed meanwhile.
   * @throws StaleVersion
   */
  async change<Row extends ObjectLiteral & { version: number }>(
    table: EntitySchema<Row>,
    id: string,
    seen: number,
    changes: Partial<Row>,
    key: 'id' | 'personId' = 'id',
  ): Promise<void> {
    const at = { operatorId: this.operatorId, [key]: id, version: seen };
    const { sql, values } = changing(table, at, { ...changes, version: seen + 1 });
    const { rowCount } = await this.ask(sql, values);
    if (rowCount !== 1) throw new StaleVersion(table.options.name, id, seen);
    if (Object.keys(changes).length > 0) this.wrote(table, id);
  }

  private readonly sent: Promise<unknown>[] = [];

  /**
   * Goes on without waiting for a write, which is carried out before whatever is asked next. The transaction waits for it
   * before it ends, and fails with it.
   */
  send(write: Promise<unknown>): void {
    write.catch(() => undefined);
    this.sent.push(write);
  }

  /** Once all that was sent is done. Fails as the first of them that failed. */
  async settled(): Promise<void> {
    await Promise.all(this.sent);
  }

  /** Why the work failed: what was sent before may have failed first, and says more. */
  firstFailure(error: unknown): Promise<unknown> {
    return this.settled().then(
      () => error,
      (earlier: unknown) => earlier,
    );
  }

  /** Nothing more is asked: the connection goes to somebody else. What runs on after a failure comes too late. */
  end(): void {
    this.isOver = true;
  }

  private ask<Row>(sql: string, values: readonly unknown[]): Promise<{ rows: Row[]; rowCount: number | null }> {
    if (this.isOver) return Promise.reject(new Error('This transaction has ended.'));
    const asked = [...values];
    return this.connection.query(sql, asked).catch((error: Error) => {
      throw new QueryFailedError(sql, asked, error);
    }) as Promise<{ rows: Row[]; rowCount: number | null }>;
  }
}
