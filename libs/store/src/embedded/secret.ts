import { createHmac, randomBytes } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';

/** The secret of this data folder, made at random the first time and readable for its owner alone. */
export function secretIn(path: string): string {
  try {
    writeFileSync(path, randomBytes(32).toString('hex'), { mode: 0o600, flag: 'wx' });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  }
  return readFileSync(path, 'utf8').trim();
}

/**
 * The password of a lesser role, derived from that of the role above it: several servers given the same owner's
 * address come to the same password without talking to each other, and nobody can go from the lesser to the higher.
 */
export function derivedPassword(secret: string, role: string): string {
  return createHmac('sha256', secret).update(role, 'utf8').digest('hex');
}
