import { UU } from '../kleene.js';
import { judged, partOf, type FixedRule } from './item.js';

/** A row whose text is held incompletely carries an unknown proviso. */
export const textComplete: FixedRule = (item) => {
  const { incomplete } = item.row;
  if (incomplete === undefined) return [];
  const because = `the text of the row is not held completely: ${incomplete}`;
  return [judged('text-complete', partOf(item, 'text'), 'the whole text of the row is known', UU, because)];
};
