import { createHash } from 'node:crypto';

/** 32 bytes of SHA-256. In memory a hash is bytes; in whatever is kept as JSON or shown it is lower-case hex. */
export type Hash = Uint8Array;

export const hashLength = 32;

/** The hash of one entry, RFC 9162 section 2.1.1: SHA-256(0x00 || bytes). */
export function leafHash(bytes: Uint8Array): Hash {
  return createHash('sha256').update(Uint8Array.of(0)).update(bytes).digest();
}

/** The hash over two subtrees: SHA-256(0x01 || left || right). The prefixes keep a leaf from passing as a node. */
export function nodeHash(left: Hash, right: Hash): Hash {
  return createHash('sha256').update(Uint8Array.of(1)).update(left).update(right).digest();
}

/** The root of a tree without entries: SHA-256 of nothing. */
export function emptyRoot(): Hash {
  return createHash('sha256').digest();
}

export function sameHash(one: Hash, other: Hash): boolean {
  return one.length === other.length && one.every((byte, index) => byte === other[index]);
}

export function hexOf(bytes: Uint8Array): string {
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** @throws RangeError when the text is not 64 lower-case hex digits */
export function hashOfHex(hex: string): Hash {
  if (typeof hex !== 'string' || !/^[0-9a-f]{64}$/.test(hex)) {
    throw new RangeError(`${JSON.stringify(String(hex).slice(0, 80))} is not a hash of 64 lower-case hex digits.`);
  }
  return Uint8Array.from({ length: hashLength }, (_, index) =>
    Number.parseInt(hex.slice(index * 2, index * 2 + 2), 16),
  );
}

/** Of a text that was checked to be pairs of hex digits, such as a signature. */
export function bytesOfHex(hex: string): Uint8Array {
  return Uint8Array.from(hex.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));
}
