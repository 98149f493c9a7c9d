import canonicalize from 'canonicalize';
import { assertPlainJson } from './plain-json.js';

/**
 * The RFC 8785 text of any JSON value: keys sorted by UTF-16 code unit, numbers as ECMAScript prints them, no blanks.
 * `{ b: 1, a: 4.50 }` gives `{"a":4.5,"b":1}`.
 * @throws Unrecordable when JSON cannot hold the value
 */
export function canonicalText(value: unknown): string {
  assertPlainJson(value, false);
  return canonicalize(value) as string;
}

/**
 * The bytes of one record entry: the RFC 8785 text in UTF-8, of values that survive the way through a database and
 * a second reader unchanged. These bytes, not the object, are what is kept and hashed.
 * @throws Unrecordable also for an integer beyond 2^53 - 1 and for U+0000 in any text or key
 */
export function recordBytes(value: unknown): Uint8Array {
  assertPlainJson(value, true);
  return new TextEncoder().encode(canonicalize(value) as string);
}
