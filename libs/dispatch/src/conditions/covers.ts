import { FF, TT } from '../kleene.js';
import { judged, partOf, type FixedRule } from './item.js';

/** The row relieves this unit. A row that names other units gives no relief by analogy. */
export const covers: FixedRule = (item) => {
  const { covers: named } = item.row;
  if (named === undefined) return [];
  const holds = named.includes(item.unit);
  const text = `the row is for ${named.join(', ')}`;
  const because = holds ? `unit ${item.unit} is one of them` : `the row does not relieve unit ${item.unit}`;
  return [judged('covers', partOf(item, 'covers'), text, holds ? TT : FF, because)];
};
