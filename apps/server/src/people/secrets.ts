/**
 * Secrets: proved at sign-in, and again at every signature.
 *
 * The stored form is Argon2id. A secret that was proved a moment ago is remembered for a while as a keyed hash under a key
 * that lives in this process only, so that signing ten procedures at the gate does not cost ten slow hashes. It is still
 * entered each time, and forgotten at once when the stored form changes.
 */
import { createHmac, randomBytes, timingSafeEqual } from 'node:crypto';
import { hash, verify } from '@node-rs/argon2';

const REMEMBERED_MS = 10 * 60_000;
const MOST_REMEMBERED = 2000;

/** Argon2id with the parameters that OWASP's password storage guidance names first: 19 MiB, 2 passes, 1 lane. */
const COST = { memoryCost: 19_456, timeCost: 2, parallelism: 1 };

export function hashSecret(secret: string): Promise<string> {
  return hash(secret, COST);
}

interface Remembered {
  stored: string;
  proof: Buffer;
  until: number;
}

export class Secrets {
  private readonly key = randomBytes(32);
  private readonly remembered = new Map<string, Remembered>();
  /** Compared with when there is no such name, so that "no such name" takes as long as "wrong secret". */
  private nobody: Promise<string> | null = null;

  constructor(private readonly milliseconds: () => number) {}

  async isRight(personId: string, stored: string, secret: string): Promise<boolean> {
    const proof = createHmac('sha256', this.key).update(`${personId}\n${secret}`).digest();
    const known = this.remembered.get(personId);
    if (known && known.stored === stored && this.milliseconds() < known.until) {
      if (timingSafeEqual(known.proof, proof)) return true;
    }
    const right = await verify(stored, secret);
    if (right) this.remember(personId, { stored, proof, until: this.milliseconds() + REMEMBERED_MS });
    return right;
  }

  /** Takes as long as a real check and says no. */
  async isNobody(secret: string): Promise<false> {
    this.nobody ??= hashSecret(randomBytes(16).toString('hex'));
    await verify(await this.nobody, secret);
    return false;
  }

  private remember(personId: string, what: Remembered): void {
    this.remembered.delete(personId);
    this.remembered.set(personId, what);
    const oldest = this.remembered.keys().next();
    if (this.remembered.size > MOST_REMEMBERED && !oldest.done) this.remembered.delete(oldest.value);
  }
}
