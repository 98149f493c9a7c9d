/**
 * Challenges: one attempt at a proof, made for one purpose, one session and one statement. It is taken when it is
 * answered, rightly or not, so that no answer is good twice.
 */
import { createHash, randomBytes, randomUUID } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import { isUUID } from 'class-validator';
import type { Challenge, Store } from '#store';
import { Problem } from '../http/problem.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';

export type Purpose =
  | 'passkey sign-in'
  | 'passkey signature'
  | 'passkey beside'
  | 'passkey registration'
  | 'sign-on sign-in'
  | 'sign-on link'
  | 'sign-on signature'
  | 'signed on';

const MINUTES_GOOD = 5;

/** For whom and for what; a sign-in knows neither person nor statement. */
export interface ChallengeFor {
  personId?: string;
  sessionId?: string;
  statement?: string;
  /** Where the statement itself is not at hand. */
  statementSha256?: string;
  secrets?: Record<string, string>;
}

@Injectable()
export class Challenges {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
  ) {}

  async make(purpose: Purpose, made: ChallengeFor): Promise<Challenge> {
    const createdAt = this.now();
    const challenge: Challenge = {
      id: randomUUID(),
      kind: purpose,
      personId: made.personId ?? null,
      sessionId: made.sessionId ?? null,
      secrets: made.secrets ?? { random: randomBytes(32).toString('base64url') },
      statementSha256: digestFor(made),
      createdAt,
      expiresAt: new Date(Date.parse(createdAt) + MINUTES_GOOD * 60_000).toISOString(),
    };
    await this.store.means.keepChallenge(challenge);
    return challenge;
  }

  /** @throws Problem when it is not there any more, or was made for something else or somebody else */
  async take(id: string, purpose: Purpose, asked: ChallengeFor): Promise<Challenge> {
    const taken = await this.store.means.takeChallenge(id, this.now());
    const fits =
      taken !== null &&
      taken.kind === purpose &&
      taken.personId === (asked.personId ?? null) &&
      taken.sessionId === (asked.sessionId ?? null) &&
      taken.statementSha256 === digestFor(asked);
    if (!fits) throw over();
    return taken;
  }

  /** The same where nobody is known yet: the challenge itself says for whom and for what it was made. */
  async takeAny(id: string, purposes: readonly Purpose[]): Promise<Challenge> {
    const taken = isUUID(id) ? await this.store.means.takeChallenge(id, this.now()) : null;
    if (taken === null || !purposes.includes(taken.kind as Purpose)) throw over();
    return taken;
  }
}

/** What an authenticator signs: chance, and the statement that was shown. */
export function bytesOfChallenge({ secrets, statementSha256 }: Challenge): Uint8Array<ArrayBuffer> {
  const bound = createHash('sha256').update(`${secrets['random'] ?? ''}\n${statementSha256 ?? ''}`);
  return new Uint8Array(bound.digest());
}

function digestFor({ statement, statementSha256 }: ChallengeFor): string | null {
  if (statement === undefined) return statementSha256 ?? null;
  return createHash('sha256').update(statement).digest('hex');
}

function over(): Problem {
  return new Problem('challenge-over', 'The challenge is over, was answered before, or is for another act.');
}
