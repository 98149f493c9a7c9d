/**
 * One revision of a MEL, loaded and checked: the place where entries, rows, leaves and works are looked up.
 *
 * It is made by the loader only, never changes, and is replaced by another one when a later revision takes effect.
 */
import type { Card } from './cards/card.js';
import type { ConditionLeaf, Entry, MelContent, Row, SubEntry } from './content.js';
import { leafPlaces } from './checks/places.js';
import { matchSubEntry, type MelAircraft, type SubEntryMatch } from './match-sub-entry.js';

/** The key of a work of a row: `<entry>/<row>/<procedure id>` or `<entry>/<row>/placard`. */
export const workKey = (entry: string, row: string, id: string): string => `${entry}/${row}/${id}`;

export class Mel {
  readonly #byNumber: ReadonlyMap<string, Entry>;

  constructor(readonly content: MelContent) {
    this.#byNumber = new Map(content.entries.map((entry) => [entry.number, entry]));
  }

  get entries(): readonly Entry[] {
    return this.content.entries;
  }

  entry(number: string): Entry | undefined {
    return this.#byNumber.get(number);
  }

  /** The work card that a procedure names. */
  card(id: string): Card | undefined {
    return this.content.cards?.find((card) => card.id === id);
  }

  /** Which sub-entry is written for this aircraft; `none` also for a number that the MEL does not hold. */
  matchSubEntry(number: string, aircraft: MelAircraft): SubEntryMatch {
    const entry = this.entry(number);
    return entry === undefined ? { kind: 'none' } : matchSubEntry(entry, aircraft);
  }

  /** Names of the installed units; null when no one sub-entry is known to apply. */
  unitsOf(number: string, aircraft: MelAircraft): readonly string[] | null {
    const match = this.matchSubEntry(number, aircraft);
    return match.kind === 'one' ? match.subEntry.units : null;
  }

  /** The rows offered to this aircraft; null when no one sub-entry is known to apply. */
  rowsOf(number: string, aircraft: MelAircraft): readonly Row[] | null {
    const match = this.matchSubEntry(number, aircraft);
    return match.kind === 'one' ? match.subEntry.rows : null;
  }

  /** A row of this aircraft's sub-entry by its id. */
  row(number: string, id: string, aircraft: MelAircraft): { subEntry: SubEntry; row: Row } | undefined {
    const match = this.matchSubEntry(number, aircraft);
    const row = match.kind === 'one' ? match.subEntry.rows.find((one) => one.id === id) : undefined;
    return row === undefined || match.kind !== 'one' ? undefined : { subEntry: match.subEntry, row };
  }
}

/** Every leaf of every proviso of a row, in the order written. */
export const leavesOf = (row: Row): ConditionLeaf[] =>
  (row.provisos ?? []).flatMap((proviso) => leafPlaces(proviso.when).map(({ leaf }) => leaf));

/** The keys of all works that a row owes, its placard last. */
export const worksOf = (entry: string, row: Row): string[] => [
  ...(row.procedures ?? []).map(({ id }) => workKey(entry, row.id, id)),
  ...(row.placard === undefined ? [] : [workKey(entry, row.id, 'placard')]),
];

/** The keys of all judgements that a row asks for. */
export const judgementsOf = (entry: string, row: Row): string[] =>
  (row.judgements ?? []).map(({ id }) => workKey(entry, row.id, id));
