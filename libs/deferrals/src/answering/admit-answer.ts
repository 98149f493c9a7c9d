/**
 * An answer that closes a write-up without rectifying it: only for one that nobody has answered yet, with no work open
 * and nothing left on the aircraft. 14 CFR 121.563; 145.A.50(a).
 */
import { basisInWords } from '../basis.js';
import { noCardOpen } from '../cards/no-card-open.js';
import type { Closing, DefectLife } from '../defect-life.js';
import { nothingLeft } from '../leaving/left-items.js';
import type { Signature } from '../people.js';
import { Refusal } from '../refusal.js';
import { givenAt } from '../signing/given-at.js';

/** Throws Refusal `write-up-already-answered`, `open-work` or `still-left-on-the-aircraft`. */
export function admitAnswer(life: DefectLife): void {
  const { defect, deferral, work } = life;
  if (deferral !== null) {
    throw new Refusal('write-up-already-answered', { defect, answer: basisInWords(deferral.basis) });
  }
  if (work !== null) throw new Refusal('open-work', { defect, openedAt: work.openedAt });
  noCardOpen(life);
  nothingLeft(life);
}

export function closedBy(how: Closing['how'], by: Signature, enteredAt: string): Pick<DefectLife, 'closed'> {
  return { closed: { how, at: givenAt(by, enteredAt), by } };
}
