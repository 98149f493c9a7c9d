/**
 * A first secret: made here, told once, good for one thing, the choice of an own one, and for hours only. It is a random
 * text of twenty letters, so that it cannot be guessed while it lasts.
 */
import { randomInt } from 'node:crypto';
import { hashSecret } from './secrets.js';

export const FIRST_SECRET_HOURS = 24;
/** Without what looks alike on paper. */
const LETTERS = 'abcdefghijkmnpqrstuvwxyz23456789';
const GROUPS = 4;
const GROUP_LENGTH = 5;

export interface FirstSecret {
  /** Told to one person and kept nowhere. */
  secret: string;
  hash: string;
  until: string;
}

/** Twenty letters by chance, as `k3v7m-...`: a hundred bits that can be read off paper. */
export function randomLetters(): string {
  const letter = (): string => LETTERS[randomInt(LETTERS.length)] ?? '';
  const group = (): string => Array.from({ length: GROUP_LENGTH }, letter).join('');
  return Array.from({ length: GROUPS }, group).join('-');
}

export async function firstSecret(now: string): Promise<FirstSecret> {
  const secret = randomLetters();
  const until = new Date(Date.parse(now) + FIRST_SECRET_HOURS * 3_600_000).toISOString();
  return { secret, hash: await hashSecret(secret), until };
}

/** Two may take one name at the same moment; the database lets one have it. */
export function isNameTaken(error: unknown): boolean {
  return error instanceof Error && 'constraint' in error && error.constraint === 'credential_sign_in_name';
}
