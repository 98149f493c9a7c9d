/** The code that is sent to a mailbox, so that somebody shows that they read it: eight digits, good for a day, five tries. */
import { createHash, randomInt } from 'node:crypto';
import type { ReminderAddressRow } from '#store';

const DIGITS = 8;
const DAY = 86_400_000;
const MOST_TRIES = 5;
export const MOST_CODES = 5;

export function newCode(): string {
  return String(randomInt(10 ** DIGITS)).padStart(DIGITS, '0');
}

/** Bound to its address: a code for one confirms no other. */
export function hashOfCode(address: string, code: string): string {
  return createHash('sha256')
    .update(`${address}/${code.replaceAll(/\s/g, '')}`)
    .digest('hex');
}

/** Whether a code is waited for: sent within a day, and not told wrong too often. */
export function isWaitedFor(
  { kind, confirmedAt, endedAt, codeHash, codeSentAt, codeTries }: ReminderAddressRow,
  now: string,
): boolean {
  if (kind !== 'email' || confirmedAt !== null || endedAt !== null || codeHash === null) return false;
  return Date.parse(now) - Date.parse(codeSentAt ?? '') < DAY && codeTries < MOST_TRIES;
}
