/**
 * The first thing that happens to foreign content: it is copied into plain objects, lists and scalars, or refused.
 *
 * After this step there is no getter, no prototype but Object's, no cycle, no key that JavaScript gives a meaning of its
 * own, no character that a page or a log could not show, and nothing larger than a MEL can sensibly be.
 */
import type { Finding } from './mel-error.js';

const DEEPEST = 80;
const MOST_NODES = 400_000;
const LONGEST_LIST = 5_000;
const MOST_KEYS = 200;
const LONGEST_TEXT = 10_000;

const FORBIDDEN_KEYS = new Set(['__proto__', 'constructor', 'prototype']);

// Controls but tab and line feed, directional overrides, and halves of surrogate pairs.
// oxlint-disable-next-line no-control-regex
const FORBIDDEN_CHARACTERS = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]|\p{Surrogate}/u;

class Unacceptable extends Error {
  constructor(
    readonly path: (string | number)[],
    readonly reason: string,
  ) {
    super(reason);
  }
}

interface Walk {
  path: (string | number)[];
  nodes: number;
}

const refuse = (walk: Walk, reason: string): never => {
  throw new Unacceptable([...walk.path], reason);
};

const textIn = (walk: Walk, value: string, what: string): string => {
  if (value.length > LONGEST_TEXT) refuse(walk, `${what} is longer than ${LONGEST_TEXT} characters`);
  const found = FORBIDDEN_CHARACTERS.exec(value);
  if (found !== null) {
    const code = value.charCodeAt(found.index).toString(16).toUpperCase().padStart(4, '0');
    refuse(walk, `${what} holds the character U+${code}, which is not allowed`);
  }
  return value;
};

const listIn = (walk: Walk, value: readonly unknown[]): unknown[] => {
  if (value.length > LONGEST_LIST) refuse(walk, `the list has more than ${LONGEST_LIST} members`);
  return Array.from({ length: value.length }, (_, index) => {
    walk.path.push(index);
    const member = copyIn(walk, Object.getOwnPropertyDescriptor(value, index)?.value);
    walk.path.pop();
    return member;
  });
};

const objectIn = (walk: Walk, value: object): Record<string, unknown> => {
  const prototype: unknown = Object.getPrototypeOf(value);
  if (prototype !== Object.prototype && prototype !== null) refuse(walk, 'is not a plain object');
  const keys = Reflect.ownKeys(value);
  if (keys.length > MOST_KEYS) refuse(walk, `the object has more than ${MOST_KEYS} keys`);
  const copy: Record<string, unknown> = {};
  for (const key of keys) {
    if (typeof key !== 'string') return refuse(walk, 'a key is not a text');
    textIn(walk, key, 'a key');
    if (FORBIDDEN_KEYS.has(key)) refuse(walk, `the key "${key}" is not allowed`);
    const property = Object.getOwnPropertyDescriptor(value, key);
    walk.path.push(key);
    if (property === undefined || !('value' in property)) refuse(walk, 'is not a plain value');
    copy[key] = copyIn(walk, property?.value);
    walk.path.pop();
  }
  return copy;
};

const copyIn = (walk: Walk, value: unknown): unknown => {
  walk.nodes += 1;
  if (walk.nodes > MOST_NODES) refuse(walk, `the file holds more than ${MOST_NODES} values`);
  if (walk.path.length > DEEPEST) refuse(walk, `the file is nested more than ${DEEPEST} deep`);
  if (value === null || typeof value === 'boolean') return value;
  if (typeof value === 'number') {
    return Number.isFinite(value) ? value : refuse(walk, 'is not a finite number');
  }
  if (typeof value === 'string') return textIn(walk, value, 'the text');
  if (Array.isArray(value)) return listIn(walk, value);
  return typeof value === 'object' ? objectIn(walk, value) : refuse(walk, 'is missing or not a plain value');
};

/** The copy, or what makes the content unacceptable (the first thing found: nothing after it is looked at). */
export const plainCopy = (value: unknown): { copy: unknown } | { finding: Finding } => {
  try {
    return { copy: copyIn({ path: [], nodes: 0 }, value) };
  } catch (error) {
    if (error instanceof Unacceptable) return { finding: { path: error.path, reason: error.reason } };
    // A proxy may throw anything from any of its traps.
    return { finding: { path: [], reason: 'cannot be read as plain values' } };
  }
};
