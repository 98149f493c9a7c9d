import { Inject, Injectable } from '@nestjs/common';
import type { Configuration, CustomFetch } from 'openid-client';
import type { Challenge, Store } from '#store';
import { Problem } from '../http/problem.js';
import type { SignedIn } from '../http/session.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import { Challenges } from './challenges.js';

export const SIGN_ON = Symbol('sign-on');

/** The sign-on of somebody else (OpenID Connect) that people may come in by, beside the accounts kept here. */
export interface SignOnSettings {
  /** What people call it. */
  name: string;
  /** Its address; everything else is read from its own description. */
  issuer: string;
  clientId: string;
  clientSecret?: string;
  /** Absent: that of the platform. */
  fetch?: typeof fetch;
}

type Purpose = 'sign-in' | 'link' | 'signature';

/** What came of an answer: somebody is let in, an account was linked, or a signature may be given. */
export type Arrived =
  { purpose: 'sign-in'; personId: string } | { purpose: 'link' } | { purpose: 'signature'; signedOn: string };

/** Signed by a key that the provider publishes; never by a secret that we share with it, never by nothing. */
const ALGORITHMS = ['RS256', 'PS256', 'ES256', 'ES384', 'EdDSA', 'Ed25519'];
const SKEW_MS = 5000;

/** Loaded with the first sign-on: most houses have none. */
const openId = () => import('openid-client');

/**
 * Signing on elsewhere: authorization code with PKCE, state and nonce, each made for one attempt. An account counts for a
 * person only where its issuer and subject were linked before by that person; no name and no e-mail address ever does, and
 * nobody is entered by signing on. Under a signature the provider asks anew, and says when it did.
 */
@Injectable()
export class SignOnService {
  private configured: Promise<Configuration> | null = null;

  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    @Inject(SIGN_ON) private readonly settings: SignOnSettings | null,
    private readonly challenges: Challenges,
  ) {}

  get name(): string | null {
    return this.settings?.name ?? null;
  }

  /** Its name, for somebody who has linked an account there; null for anybody else. */
  async nameFor(personId: string): Promise<string | null> {
    if (this.settings === null) return null;
    const linked = await this.store.means.subjectsOf(personId, this.settings.issuer);
    return linked.length > 0 ? this.settings.name : null;
  }

  /** @returns where the browser goes, and the challenge that its answer belongs to */
  async begin(
    purpose: Purpose,
    origin: URL,
    made: { personId?: string; sessionId?: string; statement?: string } = {},
  ): Promise<{ address: string; challenge: string }> {
    const configuration = await this.configuration();
    const oidc = await openId();
    const [verifier, nonce, state] = [oidc.randomPKCECodeVerifier(), oidc.randomNonce(), oidc.randomState()];
    const { id } = await this.challenges.make(`sign-on ${purpose}`, { ...made, secrets: { verifier, nonce, state } });
    const address = oidc.buildAuthorizationUrl(configuration, {
      scope: 'openid',
      redirect_uri: redirectOf(origin),
      code_challenge: await oidc.calculatePKCECodeChallenge(verifier),
      code_challenge_method: 'S256',
      nonce,
      state,
      ...(purpose === 'signature' ? { max_age: '0', prompt: 'login' } : {}),
    });
    return { address: address.href, challenge: id };
  }

  /** @param answered the address that the browser came back to, with its query */
  async arrive(challengeId: string, origin: URL, answered: string): Promise<Arrived> {
    const configuration = await this.configuration();
    const challenge = await this.challenges.takeAny(challengeId, [
      'sign-on sign-in',
      'sign-on link',
      'sign-on signature',
    ]);
    const claims = await this.claims(configuration, challenge, new URL(answered, origin));
    const { iss, sub } = claims;
    if (challenge.kind === 'sign-on link') return this.link(challenge, iss, sub);
    const personId = await this.store.means.personSignedOn(iss, sub);
    if (personId === null) throw new Problem('sign-on-unlinked', 'Nobody here has linked this account.');
    if (challenge.kind === 'sign-on sign-in') return { purpose: 'sign-in', personId };
    return this.forSignature(challenge, personId, iss, claims.auth_time ?? 0);
  }

  private async claims(configuration: Configuration, { kind, secrets }: Challenge, answered: URL) {
    const oidc = await openId();
    try {
      const tokens = await oidc.authorizationCodeGrant(configuration, answered, {
        pkceCodeVerifier: secrets['verifier'] ?? '',
        expectedNonce: secrets['nonce'] ?? '',
        expectedState: secrets['state'] ?? '',
        idTokenExpected: true,
        ...(kind === 'sign-on signature' ? { maxAge: 0 } : {}),
      });
      const claims = tokens.claims();
      if (claims && ALGORITHMS.includes(algorithmOf(tokens.id_token ?? ''))) return claims;
    } catch (error) {
      if (!(error instanceof Error)) throw error;
    }
    throw new Problem('sign-on-failed', 'The sign-on did not prove who you are.');
  }

  private async link(challenge: Challenge, issuer: string, subject: string): Promise<Arrived> {
    const linked = await this.store.means.linkSignOn(challenge.personId ?? '', issuer, subject, this.now());
    if (!linked) throw new Problem('sign-on-taken', 'This account is linked to somebody already.');
    return { purpose: 'link' };
  }

  /** The same person, asked by the provider after this signature was begun. */
  private async forSignature(
    { personId, sessionId, statementSha256, createdAt }: Challenge,
    signedOn: string,
    issuer: string,
    authTime: number,
  ): Promise<Arrived> {
    const asked = Math.floor(Date.parse(createdAt) / 1000) * 1000 - SKEW_MS;
    if (signedOn !== personId || authTime * 1000 < asked) {
      throw new Problem('sign-on-failed', 'The sign-on did not prove anew that it is you.');
    }
    const made = await this.challenges.make('signed on', {
      personId,
      ...(sessionId === null ? {} : { sessionId }),
      ...(statementSha256 === null ? {} : { statementSha256 }),
      secrets: { issuer, at: new Date(authTime * 1000).toISOString() },
    });
    return { purpose: 'signature', signedOn: made.id };
  }

  /** @returns where and when the person of the session signed on for this statement */
  async proof(
    { personId, sessionId }: Pick<SignedIn, 'personId' | 'sessionId'>,
    id: string,
    statement: string,
  ): Promise<string> {
    const { secrets } = await this.challenges.take(id, 'signed on', { personId, sessionId, statement });
    return `sign-on ${secrets['issuer']} at ${secrets['at']}`;
  }

  private configuration(): Promise<Configuration> {
    if (this.settings === null) throw new Problem('not-found', 'No sign-on of somebody else is set up here.');
    this.configured ??= discovered(this.settings).catch((error: unknown) => {
      this.configured = null;
      throw error;
    });
    return this.configured;
  }
}

async function discovered({ issuer, clientId, clientSecret, fetch: own }: SignOnSettings): Promise<Configuration> {
  const oidc = await openId();
  const server = new URL(issuer);
  // Only towards this machine itself may a provider be asked without TLS.
  const onThisMachine = server.protocol === 'http:' && ['localhost', '127.0.0.1', '[::1]'].includes(server.hostname);
  const execute = [oidc.enableNonRepudiationChecks, ...(onThisMachine ? [oidc.allowInsecureRequests] : [])];
  return oidc.discovery(server, clientId, clientSecret, undefined, {
    execute,
    ...(own ? { [oidc.customFetch]: own as CustomFetch } : {}),
  });
}

export function redirectOf(origin: URL): string {
  return new URL('/api/sign-on/callback', origin).href;
}

function algorithmOf(idToken: string): string {
  const header = JSON.parse(Buffer.from(idToken.split('.')[0] ?? '', 'base64url').toString('utf8')) as {
    alg?: string;
  };
  return header.alg ?? 'none';
}
