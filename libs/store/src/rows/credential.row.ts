import { EntitySchema } from 'typeorm';
import { instant, key, nullable, text, whole } from './column.js';
import { to } from './foreign-key.js';

/** How a person proves to be that person: one sign-in name, one hashed secret, and how often it was got wrong. */
export interface CredentialRow {
  personId: string;
  signInName: string;
  /** As the hashing library prints it, parameters included. */
  hash: string;
  failedCount: number;
  lockedUntil: string | null;
}

export const CredentialTable = new EntitySchema<CredentialRow>({
  name: 'credential',
  columns: {
    personId: key(),
    signInName: text(),
    hash: text(),
    failedCount: whole({ default: 0 }),
    lockedUntil: instant(nullable),
  },
  uniques: [{ name: 'credential_sign_in_name', columns: ['signInName'] }],
  foreignKeys: [to('credential_person', 'person', 'personId')],
});
