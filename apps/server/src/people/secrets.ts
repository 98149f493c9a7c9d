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
  private readonly looking = new Map<string, Promise<boolean>>();
  /** Compared with when there is no such name, so that "no such name" takes as long as "wrong secret". */
  private nobody: Promise<string> | null = null;

  constructor(private readonly milliseconds: () => number) {}

  /** Whether this very secret was proved a moment ago, which costs nothing to say. False says nothing. */
  isRemembered(personId: string, stored: string, secret: string): boolean {
    const known = this.remembered.get(personId);
    if (!known || known.stored !== stored || this.milliseconds() >= known.until) return false;
    return timingSafeEqual(known.proof, this.proofOf(personId, secret));
  }

  async isRight(personId: string, stored: string, secret: string): Promise<boolean> {
    const right = await verify(stored, secret);
    if (right) {
      const proof = this.proofOf(personId, secret);
      this.remember(personId, { stored, proof, until: this.milliseconds() + REMEMBERED_MS });
    }
    return right;
  }

  /**
   * The same secret for the same name, sent again while the first is still looked at, shares its answer: a person who
   * sends ten signatures at once has made one attempt, not ten.
   */
  together(name: string, secret: string, look: () => Promise<boolean>): Promise<boolean> {
    const key = this.proofOf(name, secret).toString('base64');
    const under = this.looking.get(key) ?? look().finally(() => this.looking.delete(key));
    this.looking.set(key, under);
    return under;
  }

  /** Takes as long as a real check and says no. */
  async isNobody(secret: string): Promise<false> {
    this.nobody ??= hashSecret(randomBytes(16).toString('hex'));
    await verify(await this.nobody, secret);
    return false;
  }

  private proofOf(whose: string, secret: string): Buffer {
    return createHmac('sha256', this.key).update(`${whose}\n${secret}`).digest();
  }

  private remember(personId: string, what: Remembered): void {
    this.remembered.delete(personId);
    this.remembered.set(personId, what);
    const oldest = this.remembered.keys().next();
    if (this.remembered.size > MOST_REMEMBERED && !oldest.done) this.remembered.delete(oldest.value);
  }
}
