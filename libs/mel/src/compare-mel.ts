/** What a later revision of a MEL changes, entry by entry and row by row, each change weighed from the old revision. */
import type { Entry, Row, SubEntry } from './content.js';
import type { Mel } from './mel.js';
import { canonicalText, differencesOf, type Weighing } from './restriction.js';

export interface MelChange {
  entry: string;
  subEntry: string | null;
  row: string | null;
  what: 'added' | 'removed' | 'changed';
  field: string | null;
  /** `text-only` bears on no answer. */
  weighing: Weighing | 'text-only';
  reason: string;
}

type Place = Pick<MelChange, 'entry' | 'subEntry' | 'row'>;

interface Pair<T> {
  before: T | undefined;
  after: T | undefined;
}

/** Pairs by name: what the old revision holds first, then what is new. */
const paired = <T>(before: readonly T[], after: readonly T[], nameOf: (item: T) => string): Pair<T>[] => {
  const later = new Map(after.map((item) => [nameOf(item), item]));
  const earlier = new Set(before.map(nameOf));
  return [
    ...before.map((item) => ({ before: item, after: later.get(nameOf(item)) })),
    ...after.filter((item) => !earlier.has(nameOf(item))).map((item) => ({ before: undefined, after: item })),
  ];
};

const added = (place: Place, reason: string): MelChange => ({
  ...place,
  what: 'added',
  field: null,
  weighing: 'less-restrictive',
  reason,
});

const removed = (place: Place, reason: string): MelChange => ({
  ...place,
  what: 'removed',
  field: null,
  weighing: 'more-restrictive',
  reason,
});

const rowChanges = (place: Place, { before, after }: Pair<Row>): MelChange[] => {
  if (before === undefined) return [added(place, 'a relief is added')];
  if (after === undefined) return [removed(place, 'a relief is taken away')];
  if (canonicalText(before) === canonicalText(after)) return [];
  const weighed = differencesOf(after, before).map((difference): MelChange => ({
    ...place,
    what: 'changed',
    ...difference,
  }));
  const reason = 'wording, order or source only';
  return weighed.length > 0 ? weighed : [{ ...place, what: 'changed', field: null, weighing: 'text-only', reason }];
};

const subEntryChanges = (entry: string, { before, after }: Pair<SubEntry>): MelChange[] => {
  const place: Place = { entry, subEntry: before?.id ?? after?.id ?? null, row: null };
  if (before === undefined) return [added(place, 'a sub-entry is added')];
  if (after === undefined) return [removed(place, 'a sub-entry is taken away')];
  const fields = (['appliesTo', 'units'] as const).filter(
    (field) => canonicalText(before[field] ?? null) !== canonicalText(after[field] ?? null),
  );
  return [
    ...fields.map((field): MelChange => ({
      ...place,
      what: 'changed',
      field,
      weighing: 'unclear',
      reason: field === 'units' ? 'other units are installed' : 'it is written for other aircraft',
    })),
    ...paired(before.rows, after.rows, ({ id }) => id).flatMap((pair) =>
      rowChanges({ ...place, row: pair.before?.id ?? pair.after?.id ?? null }, pair),
    ),
  ];
};

const headOf = ({ subEntries: _, ...head }: Entry): unknown => head;

const entryChanges = ({ before, after }: Pair<Entry>): MelChange[] => {
  const place: Place = { entry: before?.number ?? after?.number ?? '', subEntry: null, row: null };
  if (before === undefined) return [added(place, 'an entry is added')];
  if (after === undefined) return [removed(place, 'an entry is taken away; the item must now be operative')];
  const interaction: MelChange[] =
    before.interaction === after.interaction
      ? []
      : [
          {
            ...place,
            what: 'changed',
            field: 'interaction',
            weighing: 'unclear',
            reason: 'its part in the combination',
          },
        ];
  const retitled = interaction.length === 0 && canonicalText(headOf(before)) !== canonicalText(headOf(after));
  const text: MelChange = {
    ...place,
    what: 'changed',
    field: null,
    weighing: 'text-only',
    reason: 'title, words or source',
  };
  return [
    ...interaction,
    ...(retitled ? [text] : []),
    ...paired(before.subEntries, after.subEntries, ({ id }) => id).flatMap((pair) =>
      subEntryChanges(place.entry, pair),
    ),
  ];
};

/** Every change from `before` to `after`, in the order of the old revision, then what is new. */
export const compareMel = (before: Mel, after: Mel): MelChange[] =>
  paired(before.entries, after.entries, ({ number }) => number).flatMap(entryChanges);
