/**
 * Work, judgement and entry leaves stand only where more truth helps ("The meaning of a verdict", rule 4).
 *
 * Such a leaf may only be "done", "accepted" or "at least k up", under an even number of `not`. Otherwise doing a
 * procedure, accepting a judgement or repairing a unit could take a relief away, and "may fly after work" would promise
 * what is not so. A row that needs another item inoperative says `needsDown`.
 */
import type { ConditionLeaf, MelContent } from '../content.js';
import { factOf } from '../facts.js';
import type { Finding } from '../mel-error.js';
import { leavesIn, rowPlaces, type LeafPlace } from './places.js';
import { knownIn, type Known } from './references.js';

const MONOTONE = new Set(['entries', 'work', 'judgement']);

const countFinding = (known: Known, leaf: ConditionLeaf): string | null => {
  const { entry, units } = leaf.params ?? {};
  const most = units?.length ?? known.units.get(entry ?? '')?.size ?? 0;
  if (typeof leaf.value !== 'number' || !Number.isInteger(leaf.value) || leaf.value < 1) {
    return 'asks for at least one whole unit: a value from 1 up';
  }
  return most > 0 && leaf.value > most ? `asks for ${leaf.value} of ${most} units` : null;
};

const reasonFor = (known: Known, { leaf, nots }: LeafPlace, family: string): string | null => {
  if (nots % 2 === 1) {
    return `${leaf.fact} stands under an odd number of "not": more of it must never make a condition worse (use needsDown to need an item inoperative)`;
  }
  if (family === 'entries') {
    return leaf.operator === 'greaterThanInclusive'
      ? countFinding(known, leaf)
      : `${leaf.fact} may only be asked as "greaterThanInclusive k" (at least k), not "${leaf.operator}"`;
  }
  return leaf.operator === 'equal' && leaf.value === true ? null : `${leaf.fact} may only be asked as "equal true"`;
};

export const polarityFindings = (content: MelContent): Finding[] => {
  const known = knownIn(content);
  return rowPlaces(content)
    .flatMap(leavesIn)
    .flatMap((place) => {
      const family = factOf(place.leaf.fact)?.family;
      if (family === undefined || !MONOTONE.has(family)) return [];
      const reason = reasonFor(known, place, family);
      return reason === null ? [] : [{ path: place.path, reason }];
    });
};
