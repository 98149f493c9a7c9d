import { EntitySchema } from 'typeorm';
import { instant, key, nullable, text } from './column.js';
import { to } from './foreign-key.js';

/** How a person proves to be that person: one sign-in name, one hashed secret. */
export interface CredentialRow {
  personId: string;
  signInName: string;
  /** As the hashing library prints it, parameters included. */
  hash: string;
  /** Until when a first secret may be used to choose an own one; null once that was done. */
  firstUntil: string | null;
}

export const CredentialTable = new EntitySchema<CredentialRow>({
  name: 'credential',
  columns: {
    personId: key(),
    signInName: text(),
    hash: text(),
    firstUntil: instant(nullable),
  },
  uniques: [{ name: 'credential_sign_in_name', columns: ['signInName'] }],
  foreignKeys: [to('credential_person', 'person', 'personId')],
});
