/**
 * A signature as it is kept: bound to the record entry it was written with by that entry's leaf, which is the hash over
 * the entry's bytes. Whoever holds the entry can compute it again; one changed byte of what was signed and it differs
 * (published requirement E-07 on electronic signatures).
 */
import type { Signature } from '#deferrals';
import type { Role } from '#mel';
import { hexOf, leafHash } from '#record';
import type { SignatureRow, Tx } from '#store';

export type Given = Pick<Signature, 'person' | 'role' | 'statement' | 'method' | 'evidence' | 'signedAt'> & {
  authorisation: object;
};

/** The part of an entry that repeats the signature: what it must agree with. */
export function signedPart({ role, statement, method, evidence, signedAt }: Given): object {
  return { role, statement, method, evidence, signedAt };
}

/** Keeps a signature with the entry it was given for, in the same transaction. */
export function keepSignature(tx: Tx, entry: { id: string; leaf: string }, given: Given): Promise<string> {
  const { person, statement, authorisation, method, evidence, signedAt } = given;
  return tx.signatures.add({
    personId: person,
    statement,
    contentSha256: entry.leaf,
    authorisation,
    method,
    evidence,
    signedAt,
    entryId: entry.id,
  });
}

interface Signable<By> {
  by: By;
  secondLook?: By | null;
}

/** Who signs when an act is written: the second person, where the act is their look at what another asked for. */
export function signerOfAct<By>({ by, secondLook }: Signable<By>): By {
  return secondLook ?? by;
}

/** The same from an entry of the record; entries made before the second person was named there stand under the first. */
export function signerInEntry<By extends object>(act: Signable<By>, who: string | null): By {
  const { by, secondLook } = act;
  return secondLook && 'person' in secondLook && secondLook.person === who ? secondLook : by;
}

interface RecordedSigned {
  who: string | null;
  what: string;
  aircraft: { registration: string } | null;
  payload: { act?: Partial<Signable<SignedPart>> & { second?: SignedPart }; signature?: SignedPart };
}

type SignedPart = Partial<
  Pick<SignatureRow, 'statement' | 'method' | 'evidence' | 'signedAt'> & {
    role: Role;
    person: string;
    authorisation: object;
  }
>;

/**
 * The signature that an entry repeats, and whose it is: that of whoever acted, or at a step of a work card, which its doer
 * does not sign, that of the second person. @param who acted, as the entry says; null where nobody is named
 */
export function signatureIn(
  { act, signature }: RecordedSigned['payload'],
  who: string | null,
): { given: SignedPart; signer: string | null } {
  const { second } = act ?? {};
  const by = act?.by && signerInEntry({ ...act, by: act.by }, who);
  if (by?.statement === undefined && second?.statement !== undefined) {
    return { given: second, signer: second.person ?? null };
  }
  return { given: by ?? signature ?? {}, signer: who };
}

/** What the entry of a signature says of it. */
export function recordedWith(canonical: Uint8Array): RecordedSigned & { signed: SignedPart; signer: string | null } {
  const entry = JSON.parse(new TextDecoder().decode(canonical)) as RecordedSigned;
  const { given, signer } = signatureIn(entry.payload, entry.who);
  return { ...entry, signed: given, signer };
}

/**
 * What does not fit between a signature and the bytes of its entry; nothing when it verifies.
 * @param reference of the signer as the table of people has it; null where it was erased
 */
export function misfitsOfSignature(row: SignatureRow, canonical: Uint8Array, reference: string | null): string[] {
  const misfits: string[] = [];
  if (hexOf(leafHash(canonical)) !== row.contentSha256) misfits.push('the content is not the one that was signed');
  const { signer, signed } = recordedWith(canonical);
  for (const key of ['statement', 'method', 'evidence'] as const) {
    if (signed[key] !== row[key]) misfits.push(`the ${key} is not the one in the record`);
  }
  // The same instant is written in more than one way.
  if (Date.parse(signed.signedAt ?? '') !== Date.parse(row.signedAt)) {
    misfits.push('the signedAt is not the one in the record');
  }
  if (reference !== null && signer !== reference) misfits.push('the signer is not the person in the record');
  return misfits;
}
