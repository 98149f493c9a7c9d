import type { DataSource } from 'typeorm';
import type { Role } from '#mel';
import { newId } from './ids.js';
import { isoText } from './rows/column.js';
import type { CredentialRow } from './rows/credential.row.js';

/** Who is signed in and, once chosen, for which operator. */
export interface SignedIn {
  tokenHash: string;
  sessionId: string;
  createdAt: string;
  expiresAt: string;
  person: { id: string; name: string; reference: string };
  operatorId: string | null;
  operatorCode: string | null;
  operatorName: string | null;
  /** Empty before an operator is chosen, and while the membership is not valid. */
  roles: (Role | 'cabin')[];
}

export interface MembershipSeen {
  operatorId: string;
  code: string;
  name: string;
  roles: (Role | 'cabin')[];
  validFrom: string;
  validUntil: string | null;
}

/** Everything that happens before an operator is known: finding a credential, and the life of a session. */
export class Identity {
  constructor(private readonly source: DataSource) {}

  /** The credential under a sign-in name; null when there is none. Take as long over "none" as over "wrong". */
  async credential(signInName: string): Promise<CredentialRow | null> {
    const [row] = await this.source.query<(Omit<CredentialRow, 'lockedUntil'> & { lockedUntil: Date | null })[]>(
      `select person_id as "personId", sign_in_name as "signInName", hash, failed_count as "failedCount",
         locked_until as "lockedUntil" from credential_named($1)`,
      [signInName],
    );
    return row ? { ...row, lockedUntil: isoText(row.lockedUntil) } : null;
  }

  /** The credential of a person who is already known; null when there is none. */
  async credentialOf(personId: string): Promise<CredentialRow | null> {
    const [row] = await this.asPerson<Omit<CredentialRow, 'lockedUntil'> & { lockedUntil: Date | null }>(
      personId,
      `select person_id as "personId", sign_in_name as "signInName", hash, failed_count as "failedCount",
         locked_until as "lockedUntil" from credential where person_id = $1`,
      [personId],
    );
    return row ? { ...row, lockedUntil: isoText(row.lockedUntil) } : null;
  }

  /**
   * Counts a wrong secret, and locks from the `from`th in a row on. Counting and locking are one statement: of many wrong
   * secrets sent at once none is let through because another was counted meanwhile.
   * @returns how many there were in a row
   */
  async failed(personId: string, { from, until }: { from: number; until: string }): Promise<number> {
    const [row] = await this.asPerson<{ count: number }>(
      personId,
      `with counted as (update credential set failed_count = failed_count + 1,
           locked_until = case when failed_count + 1 >= $2 then $3::timestamptz else locked_until end
         where person_id = $1 returning failed_count) select failed_count as count from counted`,
      [personId, from, until],
    );
    return row?.count ?? 0;
  }

  async succeeded(personId: string): Promise<void> {
    await this.asPerson(
      personId,
      'update credential set failed_count = 0, locked_until = null where person_id = $1',
      [personId],
    );
  }

  async changeHash(personId: string, hash: string): Promise<void> {
    await this.asPerson(personId, 'update credential set hash = $2 where person_id = $1', [personId, hash]);
  }

  /** Begins a session without an operator. @returns its id, which a signature leads back to */
  async begin(session: {
    tokenHash: string;
    personId: string;
    createdAt: string;
    expiresAt: string;
  }): Promise<string> {
    const id = newId();
    await this.asPerson(
      session.personId,
      'insert into session (token_hash, id, person_id, created_at, expires_at) values ($1, $2, $3, $4, $5)',
      [session.tokenHash, id, session.personId, session.createdAt, session.expiresAt],
    );
    return id;
  }

  /** The session of a token, if it has not expired at `at`; null otherwise. */
  async session(tokenHash: string, at: string): Promise<SignedIn | null> {
    const [row] = await this.source.query<FoundSession[]>('select * from session_of_token($1)', [tokenHash]);
    if (!row || row.expires_at.getTime() <= Date.parse(at)) return null;
    return signedIn(row, Date.parse(at));
  }

  /**
   * Goes on for one operator under a new token; the old one is dead from then on.
   * @returns false when the session is gone or the person is no member there
   */
  async chooseOperator(session: SignedIn, operatorId: string, newTokenHash: string): Promise<boolean> {
    const memberships = await this.membershipsOf(session.person.id);
    if (!memberships.some((membership) => membership.operatorId === operatorId)) return false;
    const changed = await this.asPerson(
      session.person.id,
      `with changed as (update session set operator_id = $3, token_hash = $2 where token_hash = $1 returning 1)
       select from changed`,
      [session.tokenHash, newTokenHash, operatorId],
    );
    return changed.length === 1;
  }

  async end(session: Pick<SignedIn, 'tokenHash' | 'person'>): Promise<void> {
    await this.asPerson(session.person.id, 'delete from session where token_hash = $1', [session.tokenHash]);
  }

  /** Ends every session of a person: after a changed secret, or when the person leaves. */
  async endAll(personId: string): Promise<void> {
    await this.asPerson(personId, 'delete from session where person_id = $1', [personId]);
  }

  async membershipsOf(personId: string): Promise<MembershipSeen[]> {
    const rows = await this.source.query<
      (Omit<MembershipSeen, 'validFrom' | 'validUntil'> & { validFrom: Date; validUntil: Date | null })[]
    >(
      `select operator_id as "operatorId", code, name, roles, valid_from as "validFrom",
         valid_until as "validUntil" from memberships_of($1)`,
      [personId],
    );
    return rows.map((row) => ({
      ...row,
      validFrom: isoText(row.validFrom) as string,
      validUntil: isoText(row.validUntil),
    }));
  }

  /** One statement in which the database shows the rows of this person alone. */
  private asPerson<Row>(personId: string, sql: string, values: unknown[]): Promise<Row[]> {
    return this.source.transaction(async (manager) => {
      await manager.query("select set_config('app.person', $1, true)", [personId]);
      return manager.query<Row[]>(sql, values);
    });
  }
}

interface FoundSession {
  token_hash: string;
  id: string;
  created_at: Date;
  expires_at: Date;
  person_id: string;
  person_name: string;
  reference: string;
  operator_id: string | null;
  operator_code: string | null;
  operator_name: string | null;
  roles: (Role | 'cabin')[] | null;
  valid_from: Date | null;
  valid_until: Date | null;
}

function signedIn(row: FoundSession, at: number): SignedIn {
  const begun = row.valid_from !== null && row.valid_from.getTime() <= at;
  const valid = begun && (row.valid_until === null || at < row.valid_until.getTime());
  return {
    tokenHash: row.token_hash,
    sessionId: row.id,
    createdAt: row.created_at.toISOString(),
    expiresAt: row.expires_at.toISOString(),
    person: { id: row.person_id, name: row.person_name, reference: row.reference },
    operatorId: row.operator_id,
    operatorCode: row.operator_code,
    operatorName: row.operator_name,
    roles: valid ? (row.roles ?? []) : [],
  };
}
