import type { Transaction } from '../transaction.js';

/** A response as it was sent. */
export interface KeptResponse {
  status: number;
  headers: Record<string, string>;
  body: string;
}

export type Claim =
  /** Never seen: do the work, then `keep` the response in this same transaction. */
  | { state: 'new' }
  /** Done before: send the kept response again and do nothing. */
  | { state: 'done'; response: KeptResponse }
  /** The same key, another request. */
  | { state: 'other-request' }
  /** The same request is being worked on at this moment. */
  | { state: 'under-way' };

/** The first request under a key ended between the second one's look and its end: throw away what the second did. */
export class KeptMeanwhile extends Error {
  override readonly name = 'KeptMeanwhile';

  constructor(key: string) {
    super(`The first request under the key ${key} ended meanwhile.`);
  }
}

/** A request sent twice under one key of its sender is done once. */
export class Idempotency {
  constructor(private readonly tx: Transaction) {}

  /**
   * Claims a key for the rest of the transaction, in one question. Should the first request have ended between the look
   * and the lock, the second one is refused when it keeps its own response: nothing is done twice. It never waits: two requests with one key are a client's mistake or
   * its impatience, and the second is told so.
   * @param fingerprint says what the request asks for; equal requests have equal ones
   */
  async claim(key: string, fingerprint: string): Promise<Claim> {
    const { operatorId } = this.tx;
    const personId = this.person();
    const [found] = await this.tx.query<{ got: boolean; kept: (KeptResponse & { fingerprint: string }) | null }>(
      `select pg_try_advisory_xact_lock(hashtextextended($1, 0)) as got,
         (select jsonb_build_object('fingerprint', fingerprint, 'status', status, 'headers', headers, 'body', body)
          from idempotency where operator_id = $2 and person_id = $3 and key = $4) as kept`,
      [JSON.stringify(['idempotency', operatorId, personId, key]), operatorId, personId, key],
    );
    const kept = found?.kept;
    if (kept && kept.fingerprint !== fingerprint) return { state: 'other-request' };
    if (kept) return { state: 'done', response: { status: kept.status, headers: kept.headers, body: kept.body } };
    return found?.got ? { state: 'new' } : { state: 'under-way' };
  }

  /** @throws KeptMeanwhile when the first request under the key ended only just now */
  async keep(key: string, fingerprint: string, { status, headers, body }: KeptResponse): Promise<void> {
    const kept = await this.tx.query(
      `insert into idempotency (operator_id, person_id, key, fingerprint, status, headers, body)
       values ($1, $2, $3, $4, $5, $6, $7) on conflict do nothing returning 1`,
      [this.tx.operatorId, this.person(), key, fingerprint, status, JSON.stringify(headers), body],
    );
    if (kept.length === 0) throw new KeptMeanwhile(key);
  }

  /** Forgets what was kept before an instant. @returns how many */
  async forget(before: string): Promise<number> {
    const gone = await this.tx.query(
      'with gone as (delete from idempotency where operator_id = $1 and created_at < $2 returning 1) select from gone',
      [this.tx.operatorId, before],
    );
    return gone.length;
  }

  private person(): string {
    if (this.tx.personId === null) throw new Error('A key belongs to a person; the program itself has none.');
    return this.tx.personId;
  }
}
