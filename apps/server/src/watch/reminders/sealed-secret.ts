/**
 * Secrets of endpoints as they lie in the database: encrypted (AES-256-GCM) where the server was named a key, which never
 * lies there. Bound to its address, so that a secret put into another row opens nowhere.
 */
import { createCipheriv, createDecipheriv, randomBytes } from 'node:crypto';

const CIPHER = 'aes-256-gcm';
const PREFIX = 'sealed:1:';
const IV_BYTES = 12;
const TAG_BYTES = 16;

export interface WhoseSecret {
  operatorId: string;
  /** Of the address. */
  id: string;
}

export function isSealed(stored: string): boolean {
  return stored.startsWith(PREFIX);
}

/** As it is to be stored: under the first key, or readable where there is none. */
export function sealed(secret: string, whose: WhoseSecret, [key]: readonly Buffer[]): string {
  if (key === undefined) return secret;
  const iv = randomBytes(IV_BYTES);
  const cipher = createCipheriv(CIPHER, key, iv).setAAD(bound(whose));
  const hidden = Buffer.concat([cipher.update(secret, 'utf8'), cipher.final()]);
  return `${PREFIX}${Buffer.concat([iv, cipher.getAuthTag(), hidden]).toString('base64')}`;
}

/** The secret itself; null when no key opens it. Further keys open what was sealed before the first one was taken. */
export function opened(stored: string, whose: WhoseSecret, keys: readonly Buffer[]): string | null {
  if (!isSealed(stored)) return stored;
  const parts = Buffer.from(stored.slice(PREFIX.length), 'base64');
  for (const key of keys) {
    const secret = openedBy(key, parts, whose);
    if (secret !== null) return secret;
  }
  return null;
}

function openedBy(key: Buffer, parts: Buffer, whose: WhoseSecret): string | null {
  try {
    const iv = parts.subarray(0, IV_BYTES);
    const tag = parts.subarray(IV_BYTES, IV_BYTES + TAG_BYTES);
    const decipher = createDecipheriv(CIPHER, key, iv, { authTagLength: TAG_BYTES }).setAAD(bound(whose));
    decipher.setAuthTag(tag);
    const hidden = parts.subarray(IV_BYTES + TAG_BYTES);
    return Buffer.concat([decipher.update(hidden), decipher.final()]).toString('utf8');
  } catch {
    return null;
  }
}

function bound({ operatorId, id }: WhoseSecret): Buffer {
  return Buffer.from(`${operatorId}/${id}`, 'utf8');
}
