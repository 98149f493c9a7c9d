import type { Signature } from '../people.js';

/**
 * The moment that counts for a signature: what stands on the paper, or else the time of entry, which no signer can move.
 */
export function givenAt({ method, signedAt }: Signature, enteredAt: string): string {
  return method === 'paper' ? signedAt : enteredAt;
}
