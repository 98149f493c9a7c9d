import { createHmac } from 'node:crypto';
import { hexOf } from './hash.js';

const shortestSalt = 16;

/**
 * The name under which a person stands in the record: HMAC-SHA256 of the person's id under a random salt of that
 * person's own, as 64 hex digits. The salt is kept beside the personal data and is erased with it; what remains in the
 * record then names nobody, and the record still verifies.
 * @throws RangeError when the salt has fewer than 16 bytes or the id is empty: it could be guessed back
 */
export function personReference(salt: Uint8Array, personId: string): string {
  if (salt.length < shortestSalt) throw new RangeError(`A salt of ${salt.length} bytes is too short: 16 or more.`);
  if (personId === '') throw new RangeError('A person without an id has no reference.');
  return hexOf(createHmac('sha256', salt).update(personId, 'utf8').digest());
}
