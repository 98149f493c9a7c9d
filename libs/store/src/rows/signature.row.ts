import { EntitySchema } from 'typeorm';
import { id, instant, json, key, text } from './column.js';
import { toMember, within } from './foreign-key.js';

/** A deliberate act of one authenticated person, bound to what was signed by its hash. Never changed. */
export interface SignatureRow {
  operatorId: string;
  id: string;
  personId: string;
  /** What is certified, word for word as shown to the signer. */
  statement: string;
  /** The leaf of the record entry it was given with, as 64 hex digits. */
  contentSha256: string;
  /** Name, licence and authorisation as they stood at `signedAt`. */
  authorisation: object;
  method: string;
  /** The session or sheet that the signature leads back to. */
  evidence: string;
  signedAt: string;
  entryId: string;
}

export const SignatureTable = new EntitySchema<SignatureRow>({
  name: 'signature',
  columns: {
    operatorId: key(),
    id: key(),
    personId: id(),
    statement: text(),
    contentSha256: text({ name: 'content_sha256' }),
    authorisation: json(),
    method: text(),
    evidence: text(),
    signedAt: instant(),
    entryId: id(),
  },
  indices: [{ name: 'signature_of_entry', columns: ['operatorId', 'entryId'] }],
  checks: [
    { name: 'signature_content_sha256', expression: "content_sha256 ~ '^[0-9a-f]{64}$'" },
    { name: 'signature_method', expression: "method in ('password', 'passkey', 'single-sign-on', 'paper')" },
  ],
  foreignKeys: [toMember('signature_person', 'personId'), within('signature_entry', 'record_entry', 'entryId')],
});
