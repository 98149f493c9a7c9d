import { randomBytes } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import type { CredentialRow, MembershipSeen, SignedIn as StoredSession, Store } from '#store';
import type { SignBody } from '../http/fields.js';
import { Problem } from '../http/problem.js';
import type { Session } from '../http/session.js';
import { hashToken } from '../http/session.guard.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import type { Proof } from './proof.js';
import { Secrets } from './secrets.js';

const SESSION_HOURS = 12;
const FAILURES_BEFORE_LOCK = 5;
const LOCK_MINUTES = 5;

function locked(lockedUntil: string): Problem {
  return new Problem('sign-in-locked', `This name is locked until ${lockedUntil}.`, { lockedUntil });
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

  /**
   * Proves the secret of the person who acts, for a signature: in a step of its own, before anything is locked, and
   * before an answer that was kept for the same request is given out again.
   */
  async proveAgain({ personId, sessionId }: Session, { secret }: SignBody): Promise<Proof> {
    const credential = await this.store.identity.credentialOf(personId);
    if (!credential) throw new Problem('secret-wrong', 'There is no secret for this person.');
    const { signInName, lockedUntil } = credential;
    if (lockedUntil !== null && lockedUntil > this.now()) throw locked(lockedUntil);
    const remembered = this.secrets.isRemembered(personId, credential.hash, secret);
    if (remembered || (await this.isRight(signInName, credential, secret))) {
      return { method: 'password', evidence: `session ${sessionId}` };
    }
    throw new Problem('secret-wrong', 'The secret entered is not yours, so nothing was signed.');
  }

  async validMemberships(personId: string): Promise<MembershipSeen[]> {
    const now = this.now();
    const all = await this.store.identity.membershipsOf(personId);
    return all.filter(({ validFrom, validUntil }) => validFrom <= now && (validUntil === null || now < validUntil));
  }

  private async provenPerson(name: string, secret: string): Promise<string> {
    const credential = await this.store.identity.credential(name);
    const right = await this.isRight(name, credential, secret);
    if (!credential || !right) throw new Problem('sign-in-failed', 'The name or the secret is not right.');
    return credential.personId;
  }

  /** Counted first, looked at then, taken back when right. A name that nobody has is treated as one that somebody has. */
  private isRight(name: string, credential: CredentialRow | null, secret: string): Promise<boolean> {
    return this.secrets.together(name, secret, async () => {
      const at = this.now();
      const until = new Date(Date.parse(at) + LOCK_MINUTES * 60_000).toISOString();
      const attempt = await this.store.identity.attempt(name, { at, from: FAILURES_BEFORE_LOCK, until });
      if (!attempt.counted) throw locked(attempt.lockedUntil ?? at);
      if (!credential) return this.secrets.isNobody(secret);
      const right = await this.secrets.isRight(credential.personId, credential.hash, secret);
      if (right) await this.store.identity.takeBackAttempts(name);
      return right;
    });
  }

  private async sessionOf(tokenHash: string): Promise<StoredSession> {
    const session = await this.store.identity.session(tokenHash, this.now());
    if (!session) throw new Problem('not-signed-in', 'The session has ended.');
    return session;
  }
}
