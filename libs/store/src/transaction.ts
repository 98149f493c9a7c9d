import type { EntityManager, EntitySchema, ObjectLiteral, QueryDeepPartialEntity } from 'typeorm';
import { newId } from './ids.js';
import { StaleVersion } from './stale-version.js';

/**
 * What every repository stands on: one open transaction, in which the database shows the rows of one operator.
 * Repositories name the operator in every question all the same; the database's own rule is the second lock.
 */
export class Transaction {
  constructor(
    readonly manager: EntityManager,
    readonly operatorId: string,
    /** Who acts; null when the program itself does. */
    readonly personId: string | null,
  ) {}

  private readonly answers = new Map<string, Promise<unknown>>();

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

  query<Row>(sql: string, values: readonly unknown[] = []): Promise<Row[]> {
    return this.manager.query<Row[]>(sql, [...values]);
  }

  /** Inserts a row of this operator and gives its key. */
  async insert<Row extends ObjectLiteral>(table: EntitySchema<Row>, row: object): Promise<string> {
    const id = (row as { id?: string }).id ?? newId();
    const whole = { ...row, id, operatorId: this.operatorId };
    await this.manager.insert(table, whole as unknown as QueryDeepPartialEntity<Row>);
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
    const next = { ...changes, version: seen + 1 } as unknown as QueryDeepPartialEntity<Row>;
    const { affected } = await this.manager.update(table, at as object, next);
    if (affected !== 1) throw new StaleVersion(table.options.name, id, seen);
    if (Object.keys(changes).length > 0) this.wrote(table, id);
  }
}
