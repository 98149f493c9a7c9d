import { EntitySchema } from 'typeorm';
import { bytes, count, id, instant, nullable, text, texts } from './column.js';
import { to } from './foreign-key.js';

/** One passkey of a person (WebAuthn). It is never changed but for its counter and its last use. */
export interface PasskeyRow {
  /** The credential's own id, base64url. */
  id: string;
  personId: string;
  publicKey: Buffer;
  /** Signatures counted by the authenticator; 0 for ever where it does not count. */
  counter: number;
  transports: string[];
  /** What its owner calls it. */
  label: string;
  createdAt: string;
  lastUsedAt: string | null;
}

export const PasskeyTable = new EntitySchema<PasskeyRow>({
  name: 'passkey',
  columns: {
    id: text({ primary: true }),
    personId: id(),
    publicKey: bytes(),
    counter: count(),
    transports: texts({ default: [] }),
    label: text(),
    createdAt: instant(),
    lastUsedAt: instant(nullable),
  },
  indices: [{ name: 'passkey_of_person', columns: ['personId'] }],
  foreignKeys: [to('passkey_person', 'person', 'personId')],
});
