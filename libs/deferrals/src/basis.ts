/**
 * What a deferral stands on. There is no deferral without one (M.A.403(b)(c); ORO.MLR.105; 14 CFR 121.628).
 *
 * An MEL row is judged by its provisos. Every other basis is a document with its own limit, which it brings along as
 * conditions of the same shape. All of them share clock, limits, what is left on the aircraft, signatures and release.
 */
import type { StatedStart } from '#intervals';
import type { BroughtRow, Category, Placard, Procedure, Proviso } from '#mel';

/** A start of counting that a document states, with the document: it comes before row and policy. */
export interface StatedBy {
  start: StatedStart;
  document: string;
}

/** A row of the MEL, with what it demanded at signing: a later revision does not rewrite an open deferral. */
export interface MelRowBasis {
  kind: 'mel-row';
  document: string;
  revision: string;
  entry: string;
  subEntry: string;
  row: string;
  category: Category;
  /** What counts, e.g. "10 calendar-days"; several when the row's interval differs between the units that may be failed. */
  intervals: string[];
  numberInstalled: number;
  numberRequired: number;
  covers: string[];
  procedures: Procedure[];
  placard?: Placard;
  /** Rows of items that become considered inoperative through this one: their work is done and signed under it too. */
  brings?: BroughtRow[];
  /** Where a document states from when use counts; never later than row and policy say. */
  stated?: StatedBy;
}

/** The kinds of document other than the MEL that a deferral may stand on. */
export type DocumentKind = 'cdl' | 'nef' | 'approved-data' | 'design-approval' | 'permit' | 'authority-document';

/** A document other than the MEL. */
export interface DocumentBasis {
  kind: DocumentKind;
  /** Number or manual reference, with revision. */
  reference: string;
  /** Who issued it, e.g. the authority of a permit. */
  issuedBy: string;
  /** The limit in the document's own terms, e.g. "dent depth at most 1.2 mm". */
  limit: string;
  conditions: Proviso[];
  /** An interval that the document gives, in the words of the MEL ("10 calendar-days"). */
  interval?: string;
  /** From when its interval counts, where the document states an instant of its own; ISO 8601 with offset. */
  startsAt?: string;
  /** The same for a counter. */
  stated?: StatedBy;
  /** The document's own last instant (exclusive), ISO 8601 with offset. */
  until?: string;
  placard?: Placard;
  procedures?: Procedure[];
}

export type Basis = MelRowBasis | DocumentBasis;

/** The basis in words, for a page or a release: "MEL 32-42-01 row 1 (C)", "permit PF-12". */
export function basisInWords(basis: Basis): string {
  if (basis.kind === 'mel-row') return `MEL ${basis.entry} row ${basis.row} (category ${basis.category})`;
  return `${DOCUMENT_WORDS[basis.kind]} ${basis.reference}`;
}

const DOCUMENT_WORDS: Record<DocumentKind, string> = {
  cdl: 'CDL',
  nef: 'NEF',
  'approved-data': 'approved data',
  'design-approval': 'design approval',
  permit: 'permit',
  'authority-document': 'authority document',
};
