/**
 * An inoperative item stays where it is: it is removed only if the (M) procedure of the row in force says so, whoever needs
 * the part elsewhere. Work that is open may remove what it puts back. ORO.MLR.105; common practice on robbery, no source.
 */
import type { LeftItem } from '../acts.js';
import type { Basis } from '../basis.js';
import { proceduresOf } from '../deferring/procedures-owed.js';
import { Refusal } from '../refusal.js';
import { thingInWords } from './left-items.js';
import { isSameThing } from './same-thing.js';

/** Throws Refusal `removal-not-permitted`. A document other than the MEL says itself what may be missing. */
export function admitRemoval(defect: string, basis: Basis | null, items: readonly LeftItem[]): void {
  if (basis === null || basis.kind !== 'mel-row') return;
  const allowed = proceduresOf(basis).flatMap(({ procedure }) => procedure.leaves ?? []);
  const removed = items.find(
    (item) =>
      item.kind === 'equipment-removed' && !allowed.some((leaves) => isSameThing({ ...leaves, tag: item.tag }, item)),
  );
  if (removed === undefined) return;
  throw new Refusal('removal-not-permitted', {
    thing: thingInWords(removed),
    defect,
    row: `${basis.entry} row ${basis.row}`,
  });
}
