/**
 * Which of two rows of one item is the less restrictive, part by part.
 *
 * A part that the program cannot weigh (a reworded proviso, an interval in other units) is said to be unclear: a person
 * compares it. Unclear is never "no less restrictive".
 */
import { intervalOf, type Interval, type Limit } from '#intervals';
import type { Condition, EntryRef, Procedure, Row } from './content.js';

export type Weighing = 'less-restrictive' | 'more-restrictive' | 'unclear';

/** One difference between a row and the row it is held against; `weighing` is of the row, seen from the other. */
export interface Difference {
  field: string;
  weighing: Weighing;
  reason: string;
}

/** The same value gives the same text whatever the order of its keys. */
export const canonicalText = (value: unknown): string =>
  JSON.stringify(value, (_, part: unknown) =>
    typeof part === 'object' && part !== null && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([one], [two]) => (one < two ? -1 : 1)))
      : part,
  ) ?? '';

const longer = (limits: readonly Limit[], base: readonly Limit[]): boolean | null => {
  // Any limit ends the interval, so each limit of the base must be met by one of the same unit.
  const pairs = base.map(({ unit, amount }) => ({ amount, own: limits.find((limit) => limit.unit === unit) }));
  if (pairs.some(({ own }) => own === undefined)) return null;
  return pairs.some(({ own, amount }) => own !== undefined && own.amount > amount);
};

/** What an interval says beside its limits. */
const besideLimits = ({ limits: _, ...rest }: Interval): object => rest;

const intervalText = (row: Row): string => {
  const own = row.intervalByUnit === undefined ? row.interval : canonicalText(row.intervalByUnit);
  return own === undefined ? `category ${row.category}` : `category ${row.category}, ${own}`;
};

const intervalWeighing = (row: Row, base: Row): Weighing => {
  if (row.intervalByUnit !== undefined || base.intervalByUnit !== undefined) return 'unclear';
  const [own, other] = [intervalOf(row.category, row.interval), intervalOf(base.category, base.interval)];
  if (canonicalText(besideLimits(own)) !== canonicalText(besideLimits(other))) return 'unclear';
  // Of several limits the later one counts: a limit more is then less restrictive, so a person compares.
  if (own.joint === 'last-of' && own.limits.length !== other.limits.length) return 'unclear';
  const isLonger = longer(own.limits, other.limits);
  if (isLonger === true) return 'less-restrictive';
  // A letter may be extended where category A may not, so the same number of days is not the same.
  return isLonger === null || (base.category === 'A' && row.category !== 'A') ? 'unclear' : 'more-restrictive';
};

const intervalDifferences = (row: Row, base: Row): Difference[] => {
  if (intervalText(row) === intervalText(base)) return [];
  const field = row.category === base.category ? 'interval' : 'category';
  const reason = `${intervalText(row)} stands against ${intervalText(base)}`;
  return [{ field, weighing: intervalWeighing(row, base), reason }];
};

const numberDifferences = (row: Row, base: Row): Difference[] => {
  const spare = row.numberInstalled - row.numberRequired;
  const baseSpare = base.numberInstalled - base.numberRequired;
  const said = `${row.numberRequired} of ${row.numberInstalled} required stands against ${base.numberRequired} of ${base.numberInstalled}`;
  const field = 'numberRequired';
  if (row.numberRequired < base.numberRequired || spare > baseSpare) {
    return [{ field, weighing: 'less-restrictive', reason: said }];
  }
  return spare < baseSpare ? [{ field, weighing: 'more-restrictive', reason: said }] : [];
};

/** What the base demands and the row does not, and the other way round. */
const demandDifferences = (field: string, own: readonly string[], base: readonly string[]): Difference[] => [
  ...base
    .filter((demand) => !own.includes(demand))
    .map((demand): Difference => ({ field, weighing: 'less-restrictive', reason: `${demand} is missing` })),
  ...own
    .filter((demand) => !base.includes(demand))
    .map((demand): Difference => ({ field, weighing: 'more-restrictive', reason: `${demand} is added` })),
];

/** A condition without its wording. */
const bareCondition = (condition: Condition): unknown => {
  if ('all' in condition) return { all: condition.all.map(bareCondition) };
  if ('any' in condition) return { any: condition.any.map(bareCondition) };
  if ('not' in condition) return { not: bareCondition(condition.not) };
  const { text: _, ...leaf } = condition;
  return leaf;
};

const provisoDifferences = (row: Row, base: Row): Difference[] => {
  const own = row.provisos ?? [];
  const others = base.provisos ?? [];
  const sameIn = (list: typeof own, when: Condition): boolean =>
    list.some((one) => canonicalText(bareCondition(one.when)) === canonicalText(bareCondition(when)));
  return [
    ...others
      .filter(({ when }) => !sameIn(own, when))
      .map(({ id, text }): Difference => {
        const reworded = own.some((one) => one.id === id);
        return {
          field: 'provisos',
          weighing: reworded ? 'unclear' : 'less-restrictive',
          reason: `proviso ${id} (${text}) ${reworded ? 'has another condition' : 'is missing'}`,
        };
      }),
    ...own
      .filter(({ id, when }) => !sameIn(others, when) && !others.some((other) => other.id === id))
      .map(({ id, text }): Difference => ({
        field: 'provisos',
        weighing: 'more-restrictive',
        reason: `proviso ${id} (${text}) is added`,
      })),
  ];
};

const refText = ({ entry, units }: EntryRef): string =>
  units === undefined ? entry : `${entry} ${[...units].sort().join(', ')}`;

const refTexts = (what: string, refs: readonly EntryRef[] | undefined): string[] =>
  (refs ?? []).map((one) => `${what} ${refText(one)}`);

const procedureText = ({ id, kind, repeat, needsPersonAtStation }: Procedure): string => {
  const often = repeat === undefined || repeat === 'once' ? '' : `, repeated ${canonicalText(repeat)}`;
  return `(${kind}) ${id}${often}${needsPersonAtStation === true ? ', with a person at the station' : ''}`;
};

const lostRefs = (row: Row): EntryRef[] => (row.notes ?? []).flatMap(({ lost }) => lost ?? []);

const coverDifferences = (row: Row, base: Row): Difference[] => {
  if (base.covers === undefined && row.covers === undefined) return [];
  const said = `it covers ${row.covers?.join(', ') ?? 'every unit'}, against ${base.covers?.join(', ') ?? 'every unit'}`;
  const more =
    base.covers !== undefined && !(row.covers ?? [undefined]).every((unit) => base.covers?.includes(unit ?? ''));
  if (more) return [{ field: 'covers', weighing: 'less-restrictive', reason: said }];
  const same = canonicalText([...(row.covers ?? [])].sort()) === canonicalText([...(base.covers ?? [])].sort());
  return same ? [] : [{ field: 'covers', weighing: 'more-restrictive', reason: said }];
};

/** Against a text held in part nothing can be weighed. */
const incompleteDifferences = (row: Row, base: Row): Difference[] => {
  const field = 'incomplete';
  if (base.incomplete !== undefined) {
    const reason = 'the text it is held against is incomplete';
    return canonicalText(row) === canonicalText(base) ? [] : [{ field, weighing: 'unclear', reason }];
  }
  return row.incomplete === undefined
    ? []
    : [{ field, weighing: 'more-restrictive', reason: 'its text is now held in part' }];
};

/** Every difference that bears on what the row allows, as seen from `base`. Texts alone are not compared. */
export const differencesOf = (row: Row, base: Row): Difference[] => [
  ...intervalDifferences(row, base),
  ...numberDifferences(row, base),
  ...coverDifferences(row, base),
  ...provisoDifferences(row, base),
  ...demandDifferences(
    'procedures',
    (row.procedures ?? []).map(procedureText),
    (base.procedures ?? []).map(procedureText),
  ),
  ...demandDifferences(
    'judgements',
    (row.judgements ?? []).map(({ id, by }) => `judgement ${id} by ${by}`),
    (base.judgements ?? []).map(({ id, by }) => `judgement ${id} by ${by}`),
  ),
  ...demandDifferences('placard', row.placard ? ['the placard'] : [], base.placard ? ['the placard'] : []),
  ...demandDifferences(
    'consideredInoperative',
    refTexts('considered inoperative', [...(row.consideredInoperative ?? []), ...lostRefs(row)]),
    refTexts('considered inoperative', [...(base.consideredInoperative ?? []), ...lostRefs(base)]),
  ),
  ...demandDifferences(
    'needsDown',
    refTexts('inoperative partner', row.needsDown),
    refTexts('inoperative partner', base.needsDown),
  ),
  ...incompleteDifferences(row, base),
];
