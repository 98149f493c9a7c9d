import type { Head } from './growing-tree.js';
import type { SignedHead } from './signed-head.js';

export const proofFormat = 'proviso-record-proof/1';
export const headFormat = 'proviso-record-head/1';

/** A signed head as it is exported, to be kept where the house cannot reach it. */
export interface HeadFile extends SignedHead {
  readonly format: typeof headFormat;
  /** The operator's code, for people; `log` is what counts. */
  readonly operator: string;
}

/** One entry, with what leads from it to the head. */
export interface ProvenEntry {
  /** Counted from 1. */
  readonly number: number;
  /** The exact canonical text; its UTF-8 bytes are what was hashed. */
  readonly canonical: string;
  /** 64 hex digits. */
  readonly leaf: string;
  /** Hex, from the leaf upwards (RFC 9162 section 2.1.3). */
  readonly proof: readonly string[];
}

/**
 * What an auditor is handed and checks without the house: entries word for word, a head, and the hashes that tie them
 * together. It may carry more (names, words); only what stands here is proved.
 */
export interface ProofFile {
  readonly format: typeof proofFormat;
  /** Whose record it is: the operator's id, as the entries say it. */
  readonly log: string;
  /** Signed, or the bare head where the house signs none. */
  readonly head: SignedHead | (Head & { readonly log: string });
  /** A head from earlier and the hashes that show the record to have only grown since (RFC 9162 section 2.1.4). */
  readonly earlier: { readonly head: SignedHead; readonly proof: readonly string[] } | null;
  readonly entries: readonly ProvenEntry[];
}
