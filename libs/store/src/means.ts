import type { DataSource } from 'typeorm';
import { asPerson } from './as-person.js';
import { isoText } from './rows/column.js';
import type { PasskeyRow } from './rows/passkey.row.js';

/** One attempt at a proof. It is taken once, right or wrong, and ends by itself. */
export interface Challenge {
  id: string;
  /** What it was made for; one made for a sign-in is worth nothing under a signature. */
  kind: string;
  /** Null before anybody is known. */
  personId: string | null;
  sessionId: string | null;
  /** What only this server knows of it: nonce, verifier, random bytes. */
  secrets: Record<string, string>;
  /** The statement it was made for, as 64 hex digits; null for a sign-in. */
  statementSha256: string | null;
  createdAt: string;
  expiresAt: string;
}

const PASSKEY = `id, person_id as "personId", public_key as "publicKey", counter::float8 as counter, transports, label,
  created_at as "createdAt", last_used_at as "lastUsedAt"`;

type FoundPasskey = Omit<PasskeyRow, 'createdAt' | 'lastUsedAt'> & { createdAt: Date; lastUsedAt: Date | null };

/** Other means than a secret to prove to be a person: passkeys, linked accounts, and the challenges to both. */
export class Means {
  constructor(private readonly source: DataSource) {}

  async keepChallenge(challenge: Challenge): Promise<void> {
    const { id, kind, personId, sessionId, secrets, statementSha256, createdAt, expiresAt } = challenge;
    await this.source.query('select keep_challenge(row($1, $2, $3, $4, $5, $6, $7, $8)::challenge)', [
      id,
      kind,
      personId,
      sessionId,
      JSON.stringify(secrets),
      statementSha256,
      createdAt,
      expiresAt,
    ]);
  }

  /** Takes it, for ever. @returns null for one that is unknown, taken before, or over at `at` */
  async takeChallenge(id: string, at: string): Promise<Challenge | null> {
    const [row] = await this.source.query<(Omit<Challenge, 'createdAt' | 'expiresAt'> & Times)[]>(
      `select id, kind, person_id as "personId", session_id as "sessionId", secrets,
         statement_sha256 as "statementSha256", created_at as "createdAt", expires_at as "expiresAt"
       from take_challenge($1, $2)`,
      [id, at],
    );
    if (!row) return null;
    return { ...row, createdAt: row.createdAt.toISOString(), expiresAt: row.expiresAt.toISOString() };
  }

  /** A passkey by its own id, before its person is known; null when there is none. */
  async passkey(id: string): Promise<PasskeyRow | null> {
    const [row] = await this.source.query<FoundPasskey[]>(`select ${PASSKEY} from passkey_named($1)`, [id]);
    return row ? readPasskey(row) : null;
  }

  async passkeysOf(personId: string): Promise<PasskeyRow[]> {
    const sql = `select ${PASSKEY} from passkey where person_id = $1 order by created_at, id`;
    return (await asPerson<FoundPasskey>(this.source, personId, sql, [personId])).map(readPasskey);
  }

  async addPasskey(passkey: Omit<PasskeyRow, 'lastUsedAt'>): Promise<void> {
    const { id, personId, publicKey, counter, transports, label, createdAt } = passkey;
    await asPerson(
      this.source,
      personId,
      `insert into passkey (id, person_id, public_key, counter, transports, label, created_at)
       values ($1, $2, $3, $4, $5, $6, $7)`,
      [id, personId, publicKey, counter, transports, label, createdAt],
    );
  }

  /**
   * Writes down a use, if the authenticator counted on: a counter that did not move on is that of a copy.
   * @returns false when it did not; an authenticator that never counts says 0 each time
   */
  async usePasskey({ id, personId }: PasskeyRow, counter: number, at: string): Promise<boolean> {
    const used = await asPerson(
      this.source,
      personId,
      `with used as (update passkey set counter = $2, last_used_at = $3
         where id = $1 and (counter < $2 or (counter = 0 and $2 = 0)) returning 1) select from used`,
      [id, counter, at],
    );
    return used.length === 1;
  }

  async removePasskey(personId: string, id: string): Promise<boolean> {
    const sql = 'with gone as (delete from passkey where id = $1 returning 1) select from gone';
    return (await asPerson(this.source, personId, sql, [id])).length === 1;
  }

  /** Whose account this is; null when nobody linked it. */
  async personSignedOn(issuer: string, subject: string): Promise<string | null> {
    const [row] = await this.source.query<{ person: string | null }[]>('select person_signed_on($1, $2) as person', [
      issuer,
      subject,
    ]);
    return row?.person ?? null;
  }

  /** The accounts of a person at an issuer. */
  async subjectsOf(personId: string, issuer: string): Promise<string[]> {
    const sql = 'select subject from sign_on_identity where person_id = $1 and issuer = $2 order by linked_at';
    const rows = await asPerson<{ subject: string }>(this.source, personId, sql, [personId, issuer]);
    return rows.map(({ subject }) => subject);
  }

  /** @returns false when the account is somebody's already */
  async linkSignOn(personId: string, issuer: string, subject: string, at: string): Promise<boolean> {
    const linked = await asPerson(
      this.source,
      personId,
      `insert into sign_on_identity (issuer, subject, person_id, linked_at) values ($1, $2, $3, $4)
       on conflict do nothing returning 1`,
      [issuer, subject, personId, at],
    );
    return linked.length === 1;
  }
}

interface Times {
  createdAt: Date;
  expiresAt: Date;
}

function readPasskey(row: FoundPasskey): PasskeyRow {
  return { ...row, createdAt: isoText(row.createdAt) as string, lastUsedAt: isoText(row.lastUsedAt) };
}
