import type { KeyObject } from 'node:crypto';
import { canonicalText } from './canonical.js';
import type { Head } from './growing-tree.js';
import { hashOfHex, hexOf, leafHash, type Hash } from './hash.js';
import { proofFormat, type ProofFile, type ProvenEntry } from './proof-file.js';
import { isHeadSignedBy, type SignedHead } from './signed-head.js';
import { provesConsistency, provesInclusion } from './verify-proof.js';

/** What does not fit, and where: `head`, `earlier head`, `entry 12`. */
export interface ProofFinding {
  readonly where: string;
  readonly sentence: string;
}

export interface ProofCheck {
  readonly fits: boolean;
  readonly findings: readonly ProofFinding[];
  readonly head: Head | null;
  readonly signedAt: string | null;
  /** How many entries were shown to stand in the record. */
  readonly entries: number;
  /** Size of the earlier head that the record was shown to have grown from. */
  readonly grownFrom: number | null;
}

export interface CheckOptions {
  /** The house's public key, got on another way than the file. */
  readonly key: KeyObject;
  /** A head that the reader kept; the file must show that the record still begins with it. */
  readonly held?: SignedHead;
}

/**
 * Checks a proof file with nothing but the public key. It never throws for what the file holds: a file comes from
 * somebody who may have altered it, and each thing in it that does not fit is named.
 * @throws TypeError when the key is no public Ed25519 key
 */
export function checkProof(value: unknown, { key, held }: CheckOptions): ProofCheck {
  const misshapen = misshape(value);
  if (misshapen !== null) return failed([{ where: 'file', sentence: misshapen }]);
  const file = value as ProofFile;
  const findings = [
    ...headFindings(file.head, file.log, key, 'head'),
    ...twice(file.entries),
    ...file.entries.flatMap((entry) => entryFindings(entry, file)),
    ...earlierFindings(file, key),
    ...(held ? heldFindings(file, held, key) : []),
  ];
  if (findings.length > 0) return failed(findings, file.head);
  const { size, root } = file.head;
  return {
    fits: true,
    findings,
    head: { size, root },
    signedAt: (file.head as SignedHead).signedAt,
    entries: file.entries.length,
    grownFrom: file.earlier?.head.size ?? (held ? held.size : null),
  };
}

function failed(findings: ProofFinding[], head: Head | null = null): ProofCheck {
  const shown = head && { size: head.size, root: head.root };
  return { fits: false, findings, head: shown, signedAt: null, entries: 0, grownFrom: null };
}

function headFindings(head: object, log: string, key: KeyObject, where: string): ProofFinding[] {
  const signed = head as SignedHead;
  if (typeof signed.signature !== 'string') {
    return [{ where, sentence: `The head of size ${signed.size} is not signed, so nobody answers for it.` }];
  }
  if (!isHeadSignedBy(signed, key)) {
    return [
      { where, sentence: `The head of size ${signed.size} was not signed with this key, or was altered since.` },
    ];
  }
  return signed.log === log ? [] : [{ where, sentence: `The head is of the record ${signed.log}, not of ${log}.` }];
}

function twice(entries: readonly ProvenEntry[]): ProofFinding[] {
  const seen = new Set<number>();
  return entries.flatMap(({ number }) => {
    if (seen.has(number)) return [{ where: `entry ${number}`, sentence: `Entry ${number} stands here twice.` }];
    seen.add(number);
    return [];
  });
}

function entryFindings(entry: ProvenEntry, { head, log }: ProofFile): ProofFinding[] {
  const { number, canonical, leaf, proof } = entry;
  const where = `entry ${number}`;
  const finding = (sentence: string) => [{ where, sentence }];
  const computed = leafHash(new TextEncoder().encode(canonical));
  if (hexOf(computed) !== leaf)
    return finding(`The text of entry ${number} does not give its leaf hash: it was altered.`);
  const claim = { index: number - 1, size: head.size, leafHash: computed, root: hashOfHex(head.root) };
  if (!provesInclusion({ ...claim, proof: hashes(proof) })) {
    return finding(`Nothing shows entry ${number} to stand in the record of ${head.size} entries with this root.`);
  }
  return sayings(canonical, log).flatMap((sentence) => finding(`Entry ${number} ${sentence}`));
}

/** What an entry that stands in the record must still say of itself. */
function sayings(canonical: string, log: string): string[] {
  try {
    const said = JSON.parse(canonical) as { operator?: unknown };
    if (canonicalText(said) !== canonical) return ['is not in canonical form.'];
    return said.operator === log ? [] : ['is of another operator.'];
  } catch {
    return ['is no JSON.'];
  }
}

function earlierFindings({ earlier, head, log }: ProofFile, key: KeyObject): ProofFinding[] {
  if (earlier === null) return [];
  const where = 'earlier head';
  const unsigned = headFindings(earlier.head, log, key, where);
  if (unsigned.length > 0) return unsigned;
  if (grows(earlier.head, head, hashes(earlier.proof))) return [];
  const sizes = `${earlier.head.size} entries does not begin the one of ${head.size}`;
  return [
    { where, sentence: `The record of ${sizes}: something before entry ${earlier.head.size + 1} was altered.` },
  ];
}

function heldFindings({ head, earlier, log }: ProofFile, held: SignedHead, key: KeyObject): ProofFinding[] {
  const where = 'head kept';
  const unsigned = headFindings(held, log, key, where);
  if (unsigned.length > 0) return unsigned;
  const same = [head, earlier?.head].find((one) => one?.size === held.size);
  if (same === undefined) {
    return [
      { where, sentence: `The file shows nothing of how the record grew from the ${held.size} entries you kept.` },
    ];
  }
  if (same.root === held.root) return [];
  return [{ where, sentence: `Two heads of size ${held.size} were signed and differ: the record was rewritten.` }];
}

function grows(first: Head, second: Head, proof: Hash[]): boolean {
  return provesConsistency({
    first: first.size,
    second: second.size,
    firstRoot: hashOfHex(first.root),
    secondRoot: hashOfHex(second.root),
    proof,
  });
}

function hashes(hex: readonly string[]): Hash[] {
  return hex.map(hashOfHex);
}

/** The first thing in a file that makes it no proof file at all; null when it is one. */
function misshape(value: unknown): string | null {
  if (!isObject(value) || value['format'] !== proofFormat) return `It is not of the format ${proofFormat}.`;
  const { log, head, earlier, entries } = value;
  if (typeof log !== 'string') return 'It does not say whose record it is.';
  if (!isHead(head)) return 'Its head has no size and root.';
  if (earlier !== null && !(isObject(earlier) && isHead(earlier['head']) && isHashes(earlier['proof']))) {
    return 'Its earlier head has no size, root and proof.';
  }
  if (!Array.isArray(entries)) return 'It has no list of entries.';
  const wrong = entries.findIndex((entry) => !isEntry(entry));
  return wrong === -1 ? null : `Entry at place ${wrong + 1} of its list has no number, text, leaf hash and proof.`;
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isCount(value: unknown): boolean {
  return Number.isSafeInteger(value) && (value as number) >= 0;
}

function isHash(value: unknown): boolean {
  return typeof value === 'string' && /^[0-9a-f]{64}$/.test(value);
}

function isHashes(value: unknown): boolean {
  return Array.isArray(value) && value.length <= 128 && value.every(isHash);
}

function isHead(value: unknown): boolean {
  return isObject(value) && isCount(value['size']) && isHash(value['root']);
}

function isEntry(value: unknown): boolean {
  if (!isObject(value)) return false;
  const { number, canonical, leaf, proof } = value;
  return isCount(number) && typeof canonical === 'string' && isHash(leaf) && isHashes(proof);
}
