import { randomBytes } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import type { MembershipSeen, SignedIn as StoredSession, Store, Tx } from '#store';
import { Problem } from '../http/problem.js';
import { hashToken } from '../http/session.guard.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import { Secrets } from './secrets.js';

const SESSION_HOURS = 12;
const FAILURES_BEFORE_LOCK = 5;
const LOCK_MINUTES = 5;

class WrongSecret extends Problem {
  constructor() {
    super('secret-wrong', 'The secret entered is not yours, so nothing was signed.');
  }
}

/** The life of a session: from a proved secret, through the choice of an operator, to signing out or twelve hours. */
@Injectable()
export class SignInService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    private readonly secrets: Secrets,
  ) {}

  /** @returns the token for the cookie; a person with one operator works for it at once */
  async signIn(name: string, secret: string): Promise<string> {
    const personId = await this.provenPerson(name, secret);
    const token = randomBytes(32).toString('base64url');
    const now = this.now();
    await this.store.identity.begin({
      tokenHash: hashToken(token),
      personId,
      createdAt: now,
      expiresAt: new Date(Date.parse(now) + SESSION_HOURS * 3_600_000).toISOString(),
    });
    const operators = await this.validMemberships(personId);
    const only = operators.length === 1 ? operators[0] : undefined;
    return only ? ((await this.chooseOperator(hashToken(token), only.operatorId)) ?? token) : token;
  }

  /** A new token for the chosen operator, so that a token seen before the choice opens nothing after it. */
  async chooseOperator(tokenHash: string, operatorId: string): Promise<string> {
    const session = await this.sessionOf(tokenHash);
    const token = randomBytes(32).toString('base64url');
    const chosen = await this.store.identity.chooseOperator(session, operatorId, hashToken(token));
    if (!chosen) throw new Problem('role-missing', 'You are no member of that operator.');
    return token;
  }

  async signOut(tokenHash: string): Promise<void> {
    await this.store.identity.end(await this.sessionOf(tokenHash));
  }

  /** Proves the secret of the person who acts, for a signature. Run it inside `counting`. */
  async proveAgain(tx: Tx, secret: string): Promise<void> {
    const credential = await tx.people.ownCredential();
    if (!credential) throw new Problem('secret-wrong', 'There is no secret for this person.');
    this.refuseLocked(credential.lockedUntil);
    if (await this.secrets.isRight(credential.personId, credential.hash, secret)) return;
    throw new WrongSecret();
  }

  /** Runs the work of a signature. A wrong secret counts towards the lock, once the work's transaction is gone. */
  async counting<T>(personId: string, work: () => Promise<T>): Promise<T> {
    try {
      return await work();
    } catch (error) {
      if (error instanceof WrongSecret) await this.countFailure(personId);
      throw error;
    }
  }

  async validMemberships(personId: string): Promise<MembershipSeen[]> {
    const now = this.now();
    const all = await this.store.identity.membershipsOf(personId);
    return all.filter(({ validFrom, validUntil }) => validFrom <= now && (validUntil === null || now < validUntil));
  }

  private async provenPerson(name: string, secret: string): Promise<string> {
    const credential = await this.store.identity.credential(name);
    const failed = new Problem('sign-in-failed', 'The name or the secret is not right.');
    if (!credential) {
      await this.secrets.isNobody(secret);
      throw failed;
    }
    this.refuseLocked(credential.lockedUntil);
    if (!(await this.secrets.isRight(credential.personId, credential.hash, secret))) {
      await this.countFailure(credential.personId);
      throw failed;
    }
    if (credential.failedCount > 0) await this.store.identity.succeeded(credential.personId);
    return credential.personId;
  }

  private refuseLocked(lockedUntil: string | null): void {
    if (lockedUntil === null || lockedUntil <= this.now()) return;
    throw new Problem('sign-in-locked', `This name is locked until ${lockedUntil}.`, { lockedUntil });
  }

  private async countFailure(personId: string): Promise<void> {
    const until = new Date(Date.parse(this.now()) + LOCK_MINUTES * 60_000).toISOString();
    await this.store.identity.failed(personId, { from: FAILURES_BEFORE_LOCK, until });
  }

  private async sessionOf(tokenHash: string): Promise<StoredSession> {
    const session = await this.store.identity.session(tokenHash, this.now());
    if (!session) throw new Problem('not-signed-in', 'The session has ended.');
    return session;
  }
}
