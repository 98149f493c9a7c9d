import { Inject, Injectable } from '@nestjs/common';
import { Problem } from '../http/problem.js';
import type { SignedIn } from '../http/session.js';
import { type PasskeyAnswer, PasskeysService } from './passkeys.service.js';
import type { Proof } from './proof.js';
import { type Addressed, namedOriginOf, PUBLIC_URL } from './site-address.js';

type Beside = Pick<SignedIn, 'sessionId'>;

/** Who signs beside the person of the session. */
export interface SecondSigner {
  personId: string;
  name: string;
}

/**
 * A second person who signs in the form of somebody else by a passkey. What the authenticator signs was made for that
 * person, for this session and for one thing alone, and is good once. Nobody is signed in by it.
 */
@Injectable()
export class PasskeysBeside {
  constructor(
    @Inject(PUBLIC_URL) private readonly publicUrl: string | null,
    private readonly passkeys: PasskeysService,
  ) {}

  /** @param about what is signed, and for which act: all of it is bound into the challenge */
  async ask(session: Beside, second: SecondSigner, about: string, request: Addressed): Promise<object> {
    const origin = namedOriginOf(this.publicUrl, request);
    if ((await this.passkeys.list(second.personId)).length > 0) {
      return this.passkeys.toSignBeside(session, second.personId, about, origin);
    }
    const next = `${second.name} signs with their own secret, or adds a passkey on the own page first.`;
    throw new Problem('passkey-wrong', `${second.name} has no passkey here, so nothing was asked for.`, { next });
  }

  /** @throws Problem */
  async prove(
    session: Beside,
    second: SecondSigner,
    answer: PasskeyAnswer,
    { about, request }: { about: string; request: Addressed },
  ): Promise<Proof> {
    const origin = namedOriginOf(this.publicUrl, request);
    const { personId, name } = second;
    const { id } = await this.passkeys
      .signBeside(session, personId, answer, about, origin)
      .catch((error: unknown) => {
        if (!(error instanceof Problem) || error.code !== 'passkey-wrong') throw error;
        const next = `${name} tries again with a passkey of their own, or enters their own secret.`;
        throw new Problem('passkey-wrong', `The passkey is not one of ${name}, here and now.`, { next });
      });
    return { method: 'passkey', evidence: `session ${session.sessionId} of another, passkey ${id}` };
  }
}
