import type { Act, LeftItem } from '../acts.js';

/** The things that an act puts into the register under its defect; none for most kinds of act. */
export function thingsLeftBy(act: Act): readonly LeftItem[] {
  switch (act.kind) {
    case 'placard-fitted':
      return [act.item];
    case 'left-on-the-aircraft':
    case 'taken-over':
      return act.items;
    case 'procedure-signed':
      return act.leaves;
    case 'card-stepped':
      return act.result.kind === 'out' && act.result.item !== null ? [act.result.item] : [];
    default:
      return [];
  }
}
