/** Files that were signed, and the keys to check them with. */
import { createPublicKey, type KeyObject } from 'node:crypto';
import { readText } from './read-file.js';
import { UsageError } from './usage-error.js';

export async function jsonIn(path: string): Promise<unknown> {
  try {
    return JSON.parse(await readText(path)) as unknown;
  } catch (error) {
    if (error instanceof SyntaxError) throw new UsageError(`${path}: is no JSON: ${error.message}`);
    throw error;
  }
}

export async function publicKeyIn(path: string): Promise<KeyObject> {
  const text = await readText(path);
  if (text.includes('PRIVATE KEY')) throw new UsageError(`${path}: is a private key, which belongs to nobody else`);
  try {
    const key = createPublicKey(text);
    if (key.asymmetricKeyType === 'ed25519') return key;
  } catch {
    // Said below.
  }
  throw new UsageError(`${path}: holds no public Ed25519 key in PEM`);
}
