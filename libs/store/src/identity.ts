import type { DataSource } from 'typeorm';
import type { Role } from '#mel';
import { asPerson } from './as-person.js';
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

/** A credential whose person is known, and until when its name is locked. */
export type KnownCredential = Omit<CredentialRow, 'firstUntil'> & { lockedUntil: string | null };

export interface Attempt {
  /** False while the name is locked: do not look at the secret. */
  counted: boolean;
  lockedUntil: string | null;
}

/** Everything that happens before an operator is known: finding a credential, and the life of a session. */
export class Identity {
  constructor(private readonly source: DataSource) {}

  /** The credential under a sign-in name; null when there is none. Take as long over "none" as over "wrong". */
  async credential(signInName: string): Promise<CredentialRow | null> {
    const [row] = await this.source.query<(Omit<CredentialRow, 'firstUntil'> & { firstUntil: Date | null })[]>(
      `select person_id as "personId", sign_in_name as "signInName", hash, first_until as "firstUntil"
       from credential_named($1)`,
      [signInName],
    );
    return row ? { ...row, firstUntil: isoText(row.firstUntil) } : null;
  }

  /** The credential of a person who is already known, and until when its name is locked; null when there is none. */
  async credentialOf(personId: string): Promise<KnownCredential | null> {
    const [row] = await this.source.query<(Omit<KnownCredential, 'lockedUntil'> & { lockedUntil: Date | null })[]>(
      `select person_id as "personId", sign_in_name as "signInName", hash, locked_until as "lockedUntil"
       from credential_of($1)`,
      [personId],
    );
    return row ? { ...row, lockedUntil: isoText(row.lockedUntil) } : null;
  }

  /**
   * Counts an attempt to prove the secret of a name, before the secret is looked at; from the `from`th in a row on the
   * name is locked until `until`. Looking, counting and locking are one statement: however many are sent at once, no
   * more than `from` are counted, and a locked name counts none. The name need not exist.
   */
  async attempt(
    signInName: string,
    { at, from, until }: { at: string; from: number; until: string },
  ): Promise<Attempt> {
    const [row] = await this.source.query<{ counted: boolean; until_at: Date | null }[]>(
      'select counted, until_at from count_attempt($1, $2, $3, $4)',
      [signInName, at, from, until],
    );
    return { counted: row?.counted ?? false, lockedUntil: isoText(row?.until_at ?? null) };
  }

  /** The secret was right: counting starts anew, and the name is free. What was in vain is kept for its owner to see. */
  async takeBackAttempts(signInName: string): Promise<void> {
    await this.source.query('select take_back_attempts($1)', [signInName]);
  }

  /** How often somebody tried this person's name in vain, and the person has not said that it was seen. */
  async failedAttempts(personId: string): Promise<number> {
    const [row] = await this.asPerson<{ failed: number }>(
      personId,
      'select failed from failed_attempt where person_id = $1',
      [personId],
    );
    return row?.failed ?? 0;
  }

  async failedAttemptsSeen(personId: string): Promise<void> {
    await this.asPerson(personId, 'delete from failed_attempt where person_id = $1', [personId]);
  }

  /** From then on it is the person's own. */
  async changeHash(personId: string, hash: string): Promise<void> {
    await this.asPerson(personId, 'update credential set hash = $2, first_until = null where person_id = $1', [
      personId,
      hash,
    ]);
  }

  /** Until when the person's first secret serves to choose an own one; null once there is an own one, or none at all. */
  async firstUntil(personId: string): Promise<string | null> {
    const [row] = await this.asPerson<{ first_until: Date | null }>(
      personId,
      'select first_until from credential where person_id = $1',
      [personId],
    );
    return isoText(row?.first_until ?? null);
  }

  /** Another first secret in place of one that was never used. @returns false once the person has an own one */
  async renewFirst(personId: string, hash: string, until: string): Promise<boolean> {
    const changed = await this.asPerson(
      personId,
      `with changed as (update credential set hash = $2, first_until = $3
         where person_id = $1 and first_until is not null returning 1)
       select from changed`,
      [personId, hash, until],
    );
    return changed.length === 1;
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
    const [row] = await this.source.query<FoundSession[]>(SESSION, [tokenHash]);
    return signedIn(row, at);
  }

  /** The same with what a secret is proved by, in one question; no credential where the person has none. */
  async sessionToSign(
    tokenHash: string,
    at: string,
  ): Promise<{ session: SignedIn; credential: KnownCredential | null } | null> {
    const [row] = await this.source.query<(FoundSession & FoundCredential)[]>(SESSION_TO_SIGN, [tokenHash]);
    const session = signedIn(row, at);
    if (!row || session === null) return null;
    const { signInName, hash, person_id: personId, lockedUntil } = row;
    if (signInName === null || hash === null) return { session, credential: null };
    return { session, credential: { personId, signInName, hash, lockedUntil: isoText(lockedUntil) } };
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

  /** Ends every session of a person: after a changed secret. */
  async endAll(personId: string): Promise<void> {
    await this.asPerson(personId, 'delete from session where person_id = $1', [personId]);
  }

  /** Ends those for one operator: it locks the person or is left, and has no say in what is done for another. */
  async endAllFor(operatorId: string, personId: string): Promise<void> {
    const sql = 'delete from session where person_id = $1 and operator_id = $2';
    await this.asPerson(personId, sql, [personId, operatorId]);
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

  private asPerson<Row>(personId: string, sql: string, values: unknown[]): Promise<Row[]> {
    return asPerson<Row>(this.source, personId, sql, values);
  }
}

const SESSION_COLUMNS = `token_hash, id, created_at, expires_at, s.person_id, person_name, reference, operator_id,
  operator_code, operator_name, roles, valid_from, valid_until`;
const SESSION = `select ${SESSION_COLUMNS} from session_of_token($1) s`;
const SESSION_TO_SIGN = `select ${SESSION_COLUMNS}, c.sign_in_name as "signInName", c.hash, c.locked_until as "lockedUntil"
  from session_of_token($1) s left join lateral credential_of(s.person_id) c on true`;

interface FoundCredential {
  signInName: string | null;
  hash: string | null;
  lockedUntil: Date | null;
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

function signedIn(row: FoundSession | undefined, at: string): SignedIn | null {
  if (!row || row.expires_at.getTime() <= Date.parse(at)) return null;
  const now = Date.parse(at);
  const begun = row.valid_from !== null && row.valid_from.getTime() <= now;
  const valid = begun && (row.valid_until === null || now < row.valid_until.getTime());
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
