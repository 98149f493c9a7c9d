import { EntitySchema } from 'typeorm';
import { bytes, key, nullable, text } from './column.js';

/**
 * One human being, the same for every operator. The record knows a person only by `reference`; name and salt stand
 * here alone, and with them gone the reference names nobody.
 */
export interface PersonRow {
  id: string;
  name: string;
  licenceNumber: string | null;
  reference: string;
}

/** As written: the salt is never read back by the server. */
export interface NewPersonRow extends PersonRow {
  /** Null once the personal data are erased. */
  salt: Buffer | null;
}

export const PersonTable = new EntitySchema<NewPersonRow>({
  name: 'person',
  columns: {
    id: key(),
    name: text(),
    licenceNumber: text(nullable),
    salt: bytes({ ...nullable, select: false }),
    reference: text(),
  },
  uniques: [{ name: 'person_reference', columns: ['reference'] }],
  checks: [{ name: 'person_salt', expression: 'length(salt) >= 16' }],
});
