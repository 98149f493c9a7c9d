import { createPrivateKey, createPublicKey, generateKeyPairSync, type KeyObject } from 'node:crypto';
import { mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';

/** The key with which heads are signed, and what of it may be given to everybody. */
export interface HeadKey {
  privateKey: KeyObject;
  /** PEM, for the auditor. */
  publicPem: string;
  /** The same as SubjectPublicKeyInfo in DER, hex. */
  publicHex: string;
}

/**
 * The Ed25519 key in this file, made the first time. Of several servers that make it at once one does, the others read it.
 * @throws Error when others may read the file, or it holds no such key
 */
export function headKeyIn(path: string): HeadKey {
  makeOnce(path);
  const { mode } = statSync(path);
  if ((mode & 0o077) !== 0) {
    const seen = (mode & 0o777).toString(8).padStart(4, '0');
    throw new Error(`The key ${path} may be read by others (mode ${seen}): make it 0600, or sign with a new one.`);
  }
  return headKeyOf(privateKeyIn(path));
}

export function headKeyOf(privateKey: KeyObject): HeadKey {
  const publicKey = createPublicKey(privateKey);
  return {
    privateKey,
    publicPem: publicKey.export({ type: 'spki', format: 'pem' }).toString(),
    publicHex: publicKey.export({ type: 'spki', format: 'der' }).toString('hex'),
  };
}

/** @throws TypeError for anything but the hex of a public key as `HeadKey` gives it */
export function publicKeyOfHex(hex: string): KeyObject {
  return createPublicKey({ key: Buffer.from(hex, 'hex'), type: 'spki', format: 'der' });
}

function makeOnce(path: string): void {
  mkdirSync(dirname(path), { recursive: true });
  const { privateKey } = generateKeyPairSync('ed25519');
  try {
    const pem = privateKey.export({ type: 'pkcs8', format: 'pem' });
    writeFileSync(path, pem, { mode: 0o600, flag: 'wx' });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  }
}

function privateKeyIn(path: string): KeyObject {
  const key = readable(path);
  if (key?.asymmetricKeyType === 'ed25519') return key;
  throw new Error(`The file ${path} holds no private Ed25519 key in PEM.`);
}

function readable(path: string): KeyObject | null {
  try {
    return createPrivateKey(readFileSync(path));
  } catch {
    return null;
  }
}
