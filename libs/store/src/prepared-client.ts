import pg, { type QueryResult } from 'pg';
import { type Answer, DescribedOnce } from './described-once.js';

/** Names given so far, by text. The texts come from the program, so they are few; those that vary stop being named. */
const names = new Map<string, string>();
const MOST_NAMED = 400;

/**
 * A connection that lets the database parse and plan each question once, and that sends what is asked in one turn of the
 * event loop in one piece: both cost more than most of the questions themselves.
 */
export class PreparedClient extends pg.Client {
  private isHolding = false;

  override query = ((...asked: unknown[]): unknown => {
    this.hold();
    const [text, values, ...rest] = asked;
    const name = typeof text === 'string' && Array.isArray(values) && values.length > 0 ? nameOf(text) : undefined;
    const ask = super.query.bind(this) as (...given: unknown[]) => unknown;
    if (name === undefined) return ask(...asked);
    const put = (answer: Answer) => ask(new DescribedOnce(name, text as string, values as unknown[], answer));
    const [called] = rest;
    if (typeof called === 'function') return put(called as Answer);
    return new Promise<QueryResult>((resolve, reject) => {
      put((error, result) => (error ? reject(error) : resolve(result)));
    });
  }) as pg.Client['query'];

  /** `nextTick` comes after every promise of this turn. */
  private hold(): void {
    if (this.isHolding) return;
    const { stream } = this.connection;
    this.isHolding = true;
    stream.cork();
    process.nextTick(() => {
      this.isHolding = false;
      stream.uncork();
    });
  }
}

function nameOf(text: string): string | undefined {
  const known = names.get(text);
  if (known !== undefined) return known;
  if (names.size >= MOST_NAMED) return undefined;
  const name = `q${names.size + 1}`;
  names.set(text, name);
  return name;
}
