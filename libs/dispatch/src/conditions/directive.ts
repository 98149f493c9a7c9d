import { FF } from '../kleene.js';
import { judged, type FixedRule } from './item.js';

/** An airworthiness directive that needs the item beats the MEL. */
export const directive: FixedRule = ({ entry, unit, row }, frame) =>
  frame.directives
    .filter((one) => one.entry === entry.number && (one.units === undefined || one.units.includes(unit)))
    .map((one) =>
      judged(
        'directive',
        `${entry.number}/${row.id}/${one.number}`,
        `airworthiness directive ${one.number} does not need this item`,
        FF,
        `airworthiness directive ${one.number} needs ${entry.title} ${unit} to work, which no relief of the MEL overrides`,
      ),
    );
