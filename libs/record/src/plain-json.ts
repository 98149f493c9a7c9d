import { step, Unrecordable } from './unrecordable.js';

/** Deeper than any payload of ours, and far from the depth at which recursion breaks. */
const deepest = 100;

/**
 * Refuses what JSON cannot hold, holds only by changing it, or holds in two ways: undefined, Date and other classes,
 * BigInt, functions, NaN, holes, cycles, lone surrogates (RFC 8785 section 3.2.2.2) and, with `exact`, integers that
 * a double has already rounded and U+0000, which PostgreSQL text cannot keep.
 * @throws Unrecordable with the JSON pointer of the first such place
 */
export function assertPlainJson(value: unknown, exact: boolean, pointer = '', above: readonly object[] = []): void {
  if (value === null || typeof value === 'boolean') return;
  if (typeof value === 'string') return assertText(value, exact, pointer);
  if (typeof value === 'number') return assertNumber(value, exact, pointer);
  if (typeof value !== 'object')
    throw new Unrecordable(pointer, `is of type ${typeof value}, which JSON cannot hold.`);
  if (above.includes(value)) throw new Unrecordable(pointer, 'contains itself.');
  if (above.length >= deepest) throw new Unrecordable(pointer, `lies deeper than ${deepest} levels.`);
  const path = [...above, value];
  if (Array.isArray(value)) return assertList(value, exact, pointer, path);
  assertPlainObject(value, pointer);
  for (const [key, inner] of Object.entries(value)) {
    assertText(key, exact, step(pointer, key));
    assertPlainJson(inner, exact, step(pointer, key), path);
  }
}

function assertList(list: readonly unknown[], exact: boolean, pointer: string, path: readonly object[]): void {
  if (Reflect.ownKeys(list).length !== list.length + 1) {
    throw new Unrecordable(pointer, 'is a list with holes or with named members.');
  }
  list.forEach((inner, index) => assertPlainJson(inner, exact, step(pointer, index), path));
}

function assertPlainObject(value: object, pointer: string): void {
  const prototype: unknown = Object.getPrototypeOf(value);
  if (prototype !== null && prototype !== Object.prototype) {
    const made = (prototype as { constructor?: { name?: string } }).constructor?.name ?? 'a class of its own';
    throw new Unrecordable(pointer, `is no plain object (${made}): write instants and numbers as text first.`);
  }
  for (const [key, how] of Object.entries(Object.getOwnPropertyDescriptors(value))) {
    if (!('value' in how) || !how.enumerable) throw new Unrecordable(step(pointer, key), 'is computed or hidden.');
  }
  if (Object.getOwnPropertySymbols(value).length > 0)
    throw new Unrecordable(pointer, 'has members named by symbols.');
}

function assertText(text: string, exact: boolean, pointer: string): void {
  if (/\p{Surrogate}/u.test(text))
    throw new Unrecordable(pointer, 'holds a lone surrogate, which is not a character.');
  if (exact && text.includes('\u0000')) throw new Unrecordable(pointer, 'holds the character U+0000.');
}

function assertNumber(number: number, exact: boolean, pointer: string): void {
  if (!Number.isFinite(number)) throw new Unrecordable(pointer, `is ${number}, which JSON cannot hold.`);
  if (exact && Number.isInteger(number) && !Number.isSafeInteger(number)) {
    throw new Unrecordable(pointer, `is ${number}, an integer beyond 2^53 - 1 that may already be rounded.`);
  }
}
