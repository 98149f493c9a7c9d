import { Inject, Injectable } from '@nestjs/common';
import type { AuthenticationResponseJSON, RegistrationResponseJSON } from '@simplewebauthn/server';
import type { Challenge, PasskeyRow, Store } from '#store';
import { Problem } from '../http/problem.js';
import type { SignedIn } from '../http/session.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import { bytesOfChallenge, Challenges } from './challenges.js';

const MOST_PASSKEYS = 10;
const NAME = 'Proviso';

/** Loaded with the first passkey: it reads certificates, and takes more memory than all of the server's own code. */
const webAuthn = () => import('@simplewebauthn/server');

/** The answer of an authenticator, as the browser gives it in JSON. */
export interface PasskeyAnswer {
  challenge: string;
  response: Record<string, unknown>;
}

type Whose = Pick<SignedIn, 'personId' | 'sessionId'>;
type Beside = Pick<SignedIn, 'sessionId'>;

/**
 * Passkeys (WebAuthn): made by a person who proved to be that person, used to sign in and under signatures, removed again.
 * The authenticator verifies the person each time; its signature covers the origin, and the statement that was shown.
 */
@Injectable()
export class PasskeysService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    private readonly challenges: Challenges,
  ) {}

  list(personId: string): Promise<PasskeyRow[]> {
    return this.store.means.passkeysOf(personId);
  }

  async toRegister({ personId, sessionId, name }: SignedIn, origin: URL): Promise<object> {
    const held = await this.list(personId);
    if (held.length >= MOST_PASSKEYS) throw new Problem('too-many-passkeys', `You hold ${MOST_PASSKEYS} passkeys.`);
    const challenge = await this.challenges.make('passkey registration', { personId, sessionId });
    const { generateRegistrationOptions } = await webAuthn();
    const options = await generateRegistrationOptions({
      rpName: NAME,
      rpID: origin.hostname,
      userName: name,
      userID: new TextEncoder().encode(personId),
      challenge: bytesOfChallenge(challenge),
      attestationType: 'none',
      excludeCredentials: held.map(({ id }) => ({ id })),
      authenticatorSelection: { residentKey: 'required', userVerification: 'required' },
    });
    return { challenge: challenge.id, options };
  }

  async register({ personId, sessionId }: Whose, answer: PasskeyAnswer, label: string, origin: URL): Promise<void> {
    const challenge = await this.challenges.take(answer.challenge, 'passkey registration', { personId, sessionId });
    const { verifyRegistrationResponse } = await webAuthn();
    const { registrationInfo } = await checked(() =>
      verifyRegistrationResponse({
        ...expected(challenge, origin),
        response: answer.response as unknown as RegistrationResponseJSON,
      }),
    );
    if (!registrationInfo) throw wrong();
    const { id, publicKey, counter, transports } = registrationInfo.credential;
    if (await this.store.means.passkey(id)) throw wrong();
    await this.store.means.addPasskey({
      id,
      personId,
      publicKey: Buffer.from(publicKey),
      counter,
      transports: transports ?? [],
      label,
      createdAt: this.now(),
    });
  }

  async remove(personId: string, id: string): Promise<void> {
    const gone = await this.store.means.removePasskey(personId, id);
    if (!gone) throw new Problem('not-found', 'You hold no such passkey.');
  }

  /** The browser offers what it holds for this name: nobody is named before. */
  async toSignIn(origin: URL): Promise<object> {
    const challenge = await this.challenges.make('passkey sign-in', {});
    return { challenge: challenge.id, options: await asked(challenge, origin, []) };
  }

  /** @returns whose passkey it is */
  async signIn(answer: PasskeyAnswer, origin: URL): Promise<string> {
    const challenge = await this.challenges.take(answer.challenge, 'passkey sign-in', {});
    return (await this.used(challenge, answer, origin, null)).personId;
  }

  async toSign({ personId, sessionId }: Whose, statement: string, origin: URL): Promise<object> {
    const challenge = await this.challenges.make('passkey signature', { personId, sessionId, statement });
    return { challenge: challenge.id, options: await asked(challenge, origin, await this.list(personId)) };
  }

  /** @returns the passkey that signed this statement */
  async sign(
    { personId, sessionId }: Whose,
    answer: PasskeyAnswer,
    statement: string,
    origin: URL,
  ): Promise<PasskeyRow> {
    const challenge = await this.challenges.take(answer.challenge, 'passkey signature', {
      personId,
      sessionId,
      statement,
    });
    return this.used(challenge, answer, origin, personId);
  }

  /** For somebody who signs beside the person of the session, for one thing alone. */
  async toSignBeside({ sessionId }: Beside, personId: string, about: string, origin: URL): Promise<object> {
    const challenge = await this.challenges.make('passkey beside', { personId, sessionId, statement: about });
    return { challenge: challenge.id, options: await asked(challenge, origin, await this.list(personId)) };
  }

  /** @returns the passkey of that person, which signed this one thing in this session */
  async signBeside(
    { sessionId }: Beside,
    personId: string,
    answer: PasskeyAnswer,
    about: string,
    origin: URL,
  ): Promise<PasskeyRow> {
    const challenge = await this.challenges.take(answer.challenge, 'passkey beside', {
      personId,
      sessionId,
      statement: about,
    });
    return this.used(challenge, answer, origin, personId);
  }

  private async used(
    challenge: Challenge,
    { response }: PasskeyAnswer,
    origin: URL,
    personId: string | null,
  ): Promise<PasskeyRow> {
    const passkey = typeof response['id'] === 'string' ? await this.store.means.passkey(response['id']) : null;
    if (!passkey || (personId !== null && passkey.personId !== personId)) throw wrong();
    const { id, counter } = passkey;
    const { verifyAuthenticationResponse } = await webAuthn();
    const { verified, authenticationInfo } = await checked(() =>
      verifyAuthenticationResponse({
        ...expected(challenge, origin),
        response: response as unknown as AuthenticationResponseJSON,
        credential: { id, publicKey: new Uint8Array(passkey.publicKey), counter },
      }),
    );
    if (!verified) throw wrong();
    if (!(await this.store.means.usePasskey(passkey, authenticationInfo.newCounter, this.now()))) throw wrong();
    return passkey;
  }
}

async function asked(challenge: Challenge, origin: URL, held: readonly PasskeyRow[]): Promise<object> {
  const { generateAuthenticationOptions } = await webAuthn();
  return generateAuthenticationOptions({
    rpID: origin.hostname,
    challenge: bytesOfChallenge(challenge),
    userVerification: 'required',
    allowCredentials: held.map(({ id, transports }) => ({ id, transports: transports as 'internal'[] })),
  });
}

function expected(challenge: Challenge, origin: URL) {
  return {
    expectedChallenge: Buffer.from(bytesOfChallenge(challenge)).toString('base64url'),
    expectedOrigin: origin.origin,
    expectedRPID: origin.hostname,
    requireUserVerification: true,
  };
}

/** The library throws at whatever it cannot read or does not accept; to a guesser all of it reads the same. */
async function checked<T>(check: () => Promise<T>): Promise<T> {
  try {
    return await check();
  } catch {
    throw wrong();
  }
}

function wrong(): Problem {
  return new Problem('passkey-wrong', 'The passkey does not prove that it is you, here and now.');
}
