import { sign, verify, type KeyObject } from 'node:crypto';
import { recordBytes } from './canonical.js';
import { bytesOfHex } from './hash.js';

export const erasuresFormat = 'proviso-erasures/1';

/** One whose personal data were erased. It names nobody: with the salt gone, id and reference lead to no name. */
export interface Erased {
  /** The person's id, by which a restored row is found. */
  readonly person: string;
  /** Under which the record knows the person. */
  readonly reference: string;
  /** Instant, ISO 8601 in UTC with a Z. */
  readonly erasedAt: string;
  /** Reference of whoever signed it; null where the program did it by its setting. */
  readonly by: string | null;
}

export interface ErasureStatement {
  /** Id of the operator, so that one operator's list never passes as another's. */
  readonly log: string;
  /** Its code, for people. */
  readonly operator: string;
  readonly signedAt: string;
  /** All that were ever erased, so that the longest list is enough. */
  readonly people: readonly Erased[];
}

/** All that were erased for one operator, as it is written outside the database: it outlives every backup. */
export interface ErasureList extends ErasureStatement {
  readonly format: typeof erasuresFormat;
  /** Ed25519 (RFC 8032) over the canonical bytes of the statement, as 128 hex digits. */
  readonly signature: string;
}

/** @throws RangeError when the statement is malformed */
export function signErasures(statement: ErasureStatement, key: KeyObject): ErasureList {
  if (!isWellFormed(statement)) throw new RangeError('This is no list of erasures to sign.');
  const signature = sign(null, signedBytes(statement), key).toString('hex');
  return { format: erasuresFormat, ...statement, signature };
}

/** What came from a file or a stranger, when it is a list of erasures by its form; null for anything else. */
export function erasureListIn(value: unknown): ErasureList | null {
  if (!isObject(value) || value['format'] !== erasuresFormat || !isWellFormed(value)) return null;
  const { log, operator, signedAt, people, signature } = value as unknown as ErasureList;
  if (typeof signature !== 'string' || !/^[0-9a-f]{128}$/.test(signature)) return null;
  return { format: erasuresFormat, log, operator, signedAt, people, signature };
}

/** @param key public, Ed25519 */
export function areErasuresSignedBy(list: ErasureList, key: KeyObject): boolean {
  return verify(null, signedBytes(list), key, bytesOfHex(list.signature));
}

/** The kind keeps these bytes from being taken for anything else signed with the same key. */
function signedBytes({ log, operator, signedAt, people }: ErasureStatement): Uint8Array {
  const plain = people.map(({ person, reference, erasedAt, by }) => ({ person, reference, erasedAt, by }));
  return recordBytes({ kind: 'erasures 1', log, operator, people: plain, signedAt });
}

const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;
const REFERENCE = /^[0-9a-f]{64}$/;
const INSTANT = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z$/;

function isWellFormed(value: object): boolean {
  const { log, operator, signedAt, people } = value as Record<string, unknown>;
  return (
    fits(log, UUID) &&
    fits(operator, /^.{1,40}$/) &&
    fits(signedAt, INSTANT) &&
    Array.isArray(people) &&
    people.every(isErased)
  );
}

function isErased(value: unknown): boolean {
  if (!isObject(value)) return false;
  const { person, reference, erasedAt, by } = value;
  return (
    fits(person, UUID) &&
    fits(reference, REFERENCE) &&
    fits(erasedAt, INSTANT) &&
    (by === null || fits(by, REFERENCE))
  );
}

const fits = (value: unknown, form: RegExp): boolean => typeof value === 'string' && form.test(value);

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}
