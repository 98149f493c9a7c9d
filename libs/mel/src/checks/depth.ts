/** Condition trees are at most 20 deep: nobody can read a deeper one, and the rules engine recurses. */
import type { Condition, MelContent } from '../content.js';
import type { Finding } from '../mel-error.js';
import { rowPlaces } from './places.js';

export const DEEPEST_CONDITION = 20;

/** Depth of a tree: a leaf alone is 1. */
export const depthOf = (condition: Condition): number => {
  if ('all' in condition) return 1 + Math.max(...condition.all.map(depthOf));
  if ('any' in condition) return 1 + Math.max(...condition.any.map(depthOf));
  return 'not' in condition ? 1 + depthOf(condition.not) : 1;
};

export const depthFindings = (content: MelContent): Finding[] =>
  rowPlaces(content).flatMap(({ row, path }) =>
    (row.provisos ?? []).flatMap((proviso, at) => {
      const depth = depthOf(proviso.when);
      return depth > DEEPEST_CONDITION
        ? [
            {
              path: [...path, 'provisos', at, 'when'],
              reason: `the condition is ${depth} deep; at most ${DEEPEST_CONDITION} is allowed`,
            },
          ]
        : [];
    }),
  );
