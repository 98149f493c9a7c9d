/** No deferral without a basis, and no row for a unit that it does not cover. M.A.403(b)(c); ORO.MLR.105. */
import type { FailedItem } from '../acts.js';
import type { Basis, DocumentBasis } from '../basis.js';
import { Refusal } from '../refusal.js';

/** Throws Refusal `no-basis`, `no-unit-named` or `row-not-for-this-unit`. */
export function admitBasis(defect: string, basis: Basis, item: FailedItem): void {
  if (basis.kind !== 'mel-row') return admitDocument(defect, basis);
  if (item.units.length === 0) throw new Refusal('no-unit-named', { entry: basis.entry });
  const uncovered = item.units.find((unit) => !basis.covers.includes(unit));
  if (uncovered !== undefined) {
    const { row, entry, covers } = basis;
    throw new Refusal('row-not-for-this-unit', { row, entry, covers, unit: uncovered });
  }
}

function admitDocument(defect: string, { reference, issuedBy, limit }: DocumentBasis): void {
  const missing = Object.entries({ reference, issuer: issuedBy, limit }).flatMap(([what, text]) =>
    text.trim() === '' ? [`the document's ${what} is not given`] : [],
  );
  if (missing.length > 0) throw new Refusal('no-basis', { defect, missing });
}
