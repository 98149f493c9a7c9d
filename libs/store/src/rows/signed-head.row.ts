import { EntitySchema } from 'typeorm';
import { count, instant, key, text } from './column.js';
import { within } from './foreign-key.js';

/** A head of an operator's record as it was signed and exported; at most one of each size. */
export interface SignedHeadRow {
  operatorId: string;
  size: number;
  /** 64 hex digits. */
  root: string;
  signedAt: string;
  /** Ed25519, 128 hex digits. */
  signature: string;
  /** The key it was signed with: SubjectPublicKeyInfo in DER, 88 hex digits. */
  publicKey: string;
}

export const SignedHeadTable = new EntitySchema<SignedHeadRow>({
  name: 'signed_head',
  columns: {
    operatorId: key(),
    size: count({ primary: true }),
    root: text(),
    signedAt: instant(),
    signature: text(),
    publicKey: text(),
  },
  checks: [
    { name: 'signed_head_root', expression: "root ~ '^[0-9a-f]{64}$'" },
    { name: 'signed_head_signature', expression: "signature ~ '^[0-9a-f]{128}$'" },
    { name: 'signed_head_key', expression: "public_key ~ '^[0-9a-f]{88}$'" },
  ],
  foreignKeys: [within('signed_head_of_tree', 'tree_head', 'size', 'size')],
});
