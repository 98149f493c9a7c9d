import { sign, verify, type KeyObject } from 'node:crypto';
import { recordBytes } from './canonical.js';
import type { Head } from './growing-tree.js';
import { bytesOfHex } from './hash.js';

/** A head as it leaves the house. `log` says whose record it is, so that one operator's head never passes as another's. */
export interface HeadStatement extends Head {
  readonly log: string;
  /** Instant, ISO 8601 in UTC with a Z. */
  readonly signedAt: string;
}

export interface SignedHead extends HeadStatement {
  /** Ed25519 (RFC 8032) over the canonical bytes of the statement, as 128 hex digits. */
  readonly signature: string;
}

/** @throws TypeError when the key is no private Ed25519 key, RangeError when the statement is malformed */
export function signHead(statement: HeadStatement, key: KeyObject): SignedHead {
  assertEd25519(key, 'private');
  if (!isWellFormed(statement)) throw new RangeError(`${JSON.stringify(statement)} is not a head to sign.`);
  const { log, size, root, signedAt } = statement;
  return { log, size, root, signedAt, signature: sign(null, signedBytes(statement), key).toString('hex') };
}

/**
 * False for anything malformed: a signed head comes from a file or a stranger.
 * @throws TypeError when the key is no public Ed25519 key
 */
export function isHeadSignedBy(head: SignedHead, key: KeyObject): boolean {
  assertEd25519(key, 'public');
  if (!isWellFormed(head) || !/^[0-9a-f]{128}$/.test(head.signature)) return false;
  return verify(null, signedBytes(head), key, bytesOfHex(head.signature));
}

/** The kind keeps these bytes from being taken for anything else signed with the same key. */
function signedBytes({ log, size, root, signedAt }: HeadStatement): Uint8Array {
  return recordBytes({ kind: 'record head 1', log, root, signedAt, size });
}

function isWellFormed({ log, size, root, signedAt }: HeadStatement): boolean {
  if (![log, root, signedAt].every((text) => typeof text === 'string')) return false;
  const sized = Number.isSafeInteger(size) && size >= 0 && /^[0-9a-f]{64}$/.test(root);
  return sized && /^[\x21-\x7e]{1,200}$/.test(log) && /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z$/.test(signedAt);
}

function assertEd25519(key: KeyObject, type: 'private' | 'public'): void {
  if (key.asymmetricKeyType !== 'ed25519' || key.type !== type) {
    throw new TypeError(`A head is signed with Ed25519; this is no ${type} Ed25519 key.`);
  }
}
