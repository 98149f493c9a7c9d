import { randomBytes } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import type { CredentialRow, MembershipSeen, SignedIn as StoredSession, Store } from '#store';
import type { SignBody } from '../http/fields.js';
import { Problem } from '../http/problem.js';
import type { SignedIn, WithSession } from '../http/session.js';
import { hashToken } from '../http/session.guard.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import type { Proof } from './proof.js';
import { PasskeysService } from './passkeys.service.js';
import { FailedAttempts } from './failed-attempts.service.js';
import { misfitOfSecret } from './fresh-secret.js';
import { hashSecret, Secrets } from './secrets.js';
import { SignOnService } from './sign-on.service.js';
import { namedOriginOf, PUBLIC_URL } from './site-address.js';

const SESSION_HOURS = 12;
const FAILURES_BEFORE_LOCK = 5;
const LOCK_MINUTES = 5;

/** Who is to be proved. */
type Signer = Pick<SignedIn, 'personId' | 'sessionId'>;
/** A stored secret, and whose it is. */
type Secret = Pick<CredentialRow, 'personId' | 'hash'>;
/** The request, as far as it says where the pages were opened. */
type Addressed = Pick<FastifyRequest, 'protocol' | 'host'> & Pick<WithSession, 'credential'>;

interface Means {
  /** The secret is a first one still: an own one has to be chosen. */
  first: boolean;
  secret: boolean;
  passkey: boolean;
  signOn: string | null;
}

function oneProof(): Problem {
  const reason = 'needs exactly one of secret, passkey, signedOn';
  return new Problem('invalid-input', `The signature ${reason}.`, { errors: [{ pointer: '/sign', reason }] });
}

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
    private readonly passkeys: PasskeysService,
    private readonly signOn: SignOnService,
    private readonly failed: FailedAttempts,
    @Inject(PUBLIC_URL) private readonly publicUrl: string | null,
  ) {}

  /** @returns the token for the cookie; a person with one operator works for it at once */
  async signIn(name: string, secret: string): Promise<string> {
    return this.begin(await this.provenPerson(name, secret));
  }

  /** Begins the session of somebody who was proved to be that person. */
  async begin(personId: string): Promise<string> {
    const token = randomBytes(32).toString('base64url');
    const now = this.now();
    await this.store.identity.begin({
      tokenHash: hashToken(token),
      personId,
      createdAt: now,
      expiresAt: new Date(Date.parse(now) + SESSION_HOURS * 3_600_000).toISOString(),
    });
    const first = await this.store.identity.firstUntil(personId);
    const operators = first === null ? await this.validMemberships(personId) : [];
    const only = operators.length === 1 ? operators[0] : undefined;
    return only ? ((await this.chooseOperator(hashToken(token), only.operatorId)) ?? token) : token;
  }

  /** A new token for the chosen operator, so that a token seen before the choice opens nothing after it. */
  async chooseOperator(tokenHash: string, operatorId: string): Promise<string> {
    const session = await this.sessionOf(tokenHash);
    if ((await this.store.identity.firstUntil(session.person.id)) !== null) {
      throw new Problem('own-secret-needed', 'This session was begun with a first secret.');
    }
    const token = randomBytes(32).toString('base64url');
    const chosen = await this.store.identity.chooseOperator(session, operatorId, hashToken(token));
    if (!chosen) throw new Problem('role-missing', 'You are no member of that operator.');
    return token;
  }

  /** A new secret in place of the old one. Every session of the person ends; this one goes on under a new token. */
  async changeSecret(person: SignedIn, secret: string, fresh: string): Promise<string> {
    const credential = await this.store.identity.credentialOf(person.personId);
    await this.proveSecret(person.personId, secret);
    const misfit = misfitOfSecret(fresh, [credential?.signInName ?? '', ...person.name.split(' ')]);
    const reason = fresh === secret ? 'is the one you have' : misfit;
    if (reason !== null) {
      throw new Problem('invalid-input', `The new secret ${reason}.`, { errors: [{ pointer: '/fresh', reason }] });
    }
    await this.keepFresh(person, await hashSecret(fresh));
    await this.store.identity.endAll(person.personId);
    const token = await this.begin(person.personId);
    const { operatorId } = person;
    const goesOn = operatorId !== null && (await this.sessionOf(hashToken(token))).operatorId !== operatorId;
    return goesOn ? this.chooseOperator(hashToken(token), operatorId) : token;
  }

  /** That somebody chose a secret in place of a first one stands in the record: whoever gave the first one out had it, too. */
  private async keepFresh({ personId, reference }: SignedIn, hash: string): Promise<void> {
    const first = await this.store.identity.firstUntil(personId);
    const [member] = first === null ? [] : await this.validMemberships(personId);
    if (!member) return this.store.identity.changeHash(personId, hash);
    return this.store.withOperator(member.operatorId, personId, async (tx) => {
      await tx.record.append({
        who: personId,
        authorisation: null,
        organisation: null,
        what: 'person.own-secret',
        aircraft: null,
        times: { enteredAt: this.now() },
        payload: { person: reference },
      });
      await this.store.identity.changeHash(personId, hash);
    });
  }

  async signOut(tokenHash: string): Promise<void> {
    await this.store.identity.end(await this.sessionOf(tokenHash));
  }

  /**
   * Proves that it is the person of the session who acts, for one signature: in a step of its own, before anything is
   * locked, and before an answer that was kept for the same request is given out again.
   * @throws Problem
   */
  async proveAgain(person: Signer, sign: SignBody, request: Addressed): Promise<Proof> {
    const { secret, passkey, signedOn, statement } = sign;
    if ([secret, passkey, signedOn].filter((one) => one !== undefined).length !== 1) throw oneProof();
    const session = `session ${person.sessionId}`;
    if (passkey !== undefined) {
      const origin = namedOriginOf(this.publicUrl, request);
      const { id } = await this.passkeys.sign(person, passkey, statement, origin);
      return { method: 'passkey', evidence: `${session}, passkey ${id}` };
    }
    if (signedOn !== undefined) {
      const proof = await this.signOn.proof(person, signedOn, statement);
      return { method: 'single-sign-on', evidence: `${session}, ${proof}` };
    }
    await this.proveSecret(person.personId, secret ?? '', request.credential);
    return { method: 'password', evidence: session };
  }

  /**
   * Proves a second person who signs in the form of somebody else, on one device: by the secret, which is never remembered
   * longer than that of any signature. Nobody is signed in by it, and the session goes on as it was.
   */
  async proveBeside({ sessionId }: Signer, personId: string, name: string, secret: string): Promise<Proof> {
    if ((await this.store.identity.firstUntil(personId)) !== null) {
      throw new Problem('own-secret-needed', `${name} has a first secret still, so nothing was signed.`);
    }
    if ((await this.store.identity.credentialOf(personId)) === null) {
      const next = `${name} does the step signed in on a device of their own, and you sign there as the second person.`;
      throw new Problem('secret-wrong', `${name} has no secret here, so nothing was signed.`, { next });
    }
    try {
      await this.proveSecret(personId, secret);
    } catch (error) {
      if (!(error instanceof Problem) || error.code !== 'secret-wrong') throw error;
      const reason = `is not the secret of ${name}`;
      const said = {
        next: `${name} enters their own secret again.`,
        errors: [{ pointer: '/second/secret', reason }],
      };
      throw new Problem('secret-wrong', `What was entered ${reason}, so nothing was signed.`, said);
    }
    return { method: 'password', evidence: `session ${sessionId} of another, own secret` };
  }

  /** As `proveAgain`, for a statement that is always the same. */
  async proveFor(person: Signer, sign: SignBody, statement: string, request: Addressed): Promise<Proof> {
    // Whoever handed the first secret over would otherwise keep a way in beside the own one.
    if ((await this.store.identity.firstUntil(person.personId)) !== null) {
      throw new Problem('own-secret-needed', 'Other ways to sign are added once you have a secret of your own.');
    }
    if (sign.statement === statement) return this.proveAgain(person, sign, request);
    throw new Problem('statement-not-shown', 'The statement differs from the one to be signed.', { statement });
  }

  /** By which means this person may sign. */
  async meansOf(personId: string): Promise<Means> {
    return {
      first: (await this.store.identity.firstUntil(personId)) !== null,
      secret: (await this.store.identity.credentialOf(personId)) !== null,
      passkey: (await this.passkeys.list(personId)).length > 0,
      signOn: await this.signOn.nameFor(personId),
    };
  }

  /** @param read with the session of the same request, where it was */
  private async proveSecret(personId: string, secret: string, read: WithSession['credential'] = null): Promise<void> {
    const credential = read?.personId === personId ? read : await this.store.identity.credentialOf(personId);
    if (!credential) throw new Problem('secret-wrong', 'There is no secret for this person.');
    const { signInName, lockedUntil } = credential;
    if (lockedUntil !== null && lockedUntil > this.now()) throw locked(lockedUntil);
    if (this.secrets.isRemembered(personId, credential.hash, secret)) return;
    if (await this.isRight(signInName, credential, secret)) return;
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
    const { firstUntil, personId } = credential;
    if (firstUntil !== null && firstUntil <= this.now()) {
      throw new Problem('first-secret-over', `It was good until ${firstUntil}.`);
    }
    return personId;
  }

  /** Counted first, looked at then, taken back when right. A name that nobody has is treated as one that somebody has. */
  private isRight(name: string, credential: Secret | null, secret: string): Promise<boolean> {
    return this.secrets.together(name, secret, async () => {
      const at = this.now();
      const until = new Date(Date.parse(at) + LOCK_MINUTES * 60_000).toISOString();
      const attempt = await this.store.identity.attempt(name, { at, from: FAILURES_BEFORE_LOCK, until });
      if (!attempt.counted) throw locked(attempt.lockedUntil ?? at);
      if (!credential) {
        const nobody = await this.secrets.isNobody(secret);
        this.failed.tell(null, attempt.lockedUntil);
        return nobody;
      }
      const right = await this.secrets.isRight(credential.personId, credential.hash, secret);
      if (!right) this.failed.tell(credential.personId, attempt.lockedUntil);
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
