import { comparesAll } from '../evaluate/compare.js';
import { judged, partOf, type Rule } from './item.js';

/** Enough units of the entry are up. All units of the entry count, whichever failed. */
export const numberRequired: Rule = (item, _frame, state) => {
  const { entry, row, subEntry } = item;
  const counts = state.counts('up', { entry: entry.number, units: subEntry.units });
  const truth = comparesAll(counts, 'greaterThanInclusive', row.numberRequired);
  const text = `${row.numberRequired} of ${subEntry.units.length} required for dispatch`;
  const because = `${counts.join(' or ')} of ${subEntry.units.length} operative, ${row.numberRequired} required`;
  return [judged('number-required', partOf(item, 'number'), text, { now: truth, after: truth }, because)];
};
