/** The replies that a question can get, as far as the conditions in use tell them apart. */
import { readFactKey, type Operator } from '#mel';
import type { OpenFact } from '../answer/open-fact.js';
import { compares } from '../evaluate/compare.js';
import type { Scalar } from '../evaluate/marker.js';
import type { ExplainedNode } from '../verdict.js';
import type { Reply, WeightOf } from './question-plan.js';

/** A part of a fact's domain with its words. Numbers keep their place in the order. */
interface Region {
  value: Scalar;
  words: string;
  from?: string;
  to?: string;
}

/** `leaves` are all leaves in use about the fact. */
export function repliesTo(fact: OpenFact, leaves: readonly ExplainedNode[], weightOf: WeightOf): Reply[] {
  const groups = new Map<string, Region[]>();
  for (const region of regionsOf(fact)) {
    const same = leaves.map((leaf) => tells(leaf, region.value)).join('');
    const key = fact.aboutUnits ? String(region.value) : same;
    groups.set(key, [...(groups.get(key) ?? []), region]);
  }
  const replies = [...groups.values()].map((regions) => ({
    words: wordsOf(regions),
    value: regions[0]!.value,
    weight: weightOfGroup(fact.key, regions, weightOf),
  }));
  const sum = replies.reduce((total, { weight }) => total + weight, 0);
  return replies.map((reply) => ({ ...reply, weight: sum > 0 ? reply.weight / sum : 1 / replies.length }));
}

function tells({ operator, expected }: ExplainedNode, value: Scalar): string {
  return compares(value, operator as Operator, expected as Scalar) ? 'T' : 'F';
}

/** Replies count alike unless the content says how likely some value is. */
function weightOfGroup(key: string, regions: readonly Region[], weightOf: WeightOf): number {
  const given = regions.map(({ value }) => weightOf(key, value));
  if (given.every((weight) => weight === undefined)) return 1;
  return given.reduce<number>((sum, weight) => sum + (weight ?? 0), 0);
}

function regionsOf({ key, cells, aboutUnits }: OpenFact): Region[] {
  const fact = aboutUnits ? undefined : readFactKey(key)?.fact;
  if (fact?.type !== 'number') return cells.map((value) => ({ value, words: wordFor(value) }));
  const values = cells.map(Number).sort((a, b) => a - b);
  // From the lowest: below the first cut, the first cut, between it and the next, ...; a count is never below nothing.
  const cuts = values.filter((_, index) => index % 2 === 1);
  return values
    .map((value, index): Region => {
      const [below, above] = [cuts[index / 2 - 1], cuts[index / 2]];
      if (index % 2 === 1) return { value, words: String(value), from: `at least ${value}`, to: `at most ${value}` };
      return {
        value,
        words: [below === undefined ? '' : `more than ${below}`, above === undefined ? '' : `less than ${above}`]
          .filter((part) => part !== '')
          .join(' and '),
        ...(below === undefined ? {} : { from: `more than ${below}` }),
        ...(above === undefined ? {} : { to: `less than ${above}` }),
      };
    })
    .filter(({ value }) => fact.unit === 'degrees Celsius' || Number(value) >= 0);
}

function wordsOf(regions: readonly Region[]): string {
  const [first, last] = [regions[0]!, regions.at(-1)!];
  const ordered = first.from !== undefined || first.to !== undefined;
  if (!ordered || regions.length === 1) return regions.map(({ words }) => words).join(' or ');
  return isUnbroken(regions)
    ? [first.from, last.to].filter((part) => part !== undefined).join(' and ')
    : regions.map(({ words }) => words).join(' or ');
}

/** Each region of a run ends where the next begins. */
function isUnbroken(regions: readonly Region[]): boolean {
  return regions.every((region, index) => {
    const next = regions[index + 1];
    return next === undefined || lastNumber(region.to) === lastNumber(next.from);
  });
}

function lastNumber(words: string | undefined): string {
  return words?.split(' ').at(-1) ?? '';
}

function wordFor(value: Scalar): string {
  if (value === '\u0000') return 'something else';
  return value === true ? 'yes' : value === false ? 'no' : String(value);
}
