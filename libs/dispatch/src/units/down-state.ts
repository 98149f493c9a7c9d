/**
 * Which units are down under one choice of rows, in every reading of the defects. Everything that a condition may ask
 * about entries is answered from here and from nowhere else.
 */
import type { EntryRef, Row } from '#mel';
import type { Truth } from '../verdict.js';
import { agreed } from '../kleene.js';
import { leastDown, type Consequence, type DownUnit } from './down.js';
import type { Fitted } from './fitted.js';
import type { DefectReading } from './readings.js';
import { byCode, unitKey, type Unit } from './unit.js';

/** Rows chosen for units that are considered inoperative, by unit key. */
export type ConsideredRows = ReadonlyMap<string, Row>;

/** A unit that no defect names but a row takes along, in all readings or in some. */
export interface ConsideredUnit extends Unit {
  by: Unit;
  row: string;
  inAll: boolean;
}

export class DownState {
  readonly #fitted: Fitted;
  readonly #downs: readonly ReadonlyMap<string, DownUnit>[];
  readonly #counts = new Map<string, readonly number[]>();
  /** Entries with a unit down, reading by reading. Most questions are about others. */
  readonly #touched: readonly ReadonlySet<string>[];
  #considered: ConsideredUnit[] | null = null;

  constructor(fitted: Fitted, wholes: readonly (readonly DefectReading[])[], considered: ConsideredRows) {
    this.#fitted = fitted;
    this.#downs = wholes.map((whole) => leastDown(failedUnits(whole), consequences(fitted, whole, considered)));
    this.#touched = this.#downs.map((down) => new Set([...down.values()].map(({ entry }) => entry)));
  }

  /** How many units of a reference may be up, or not failed, over all readings: each possible number once, rising. */
  counts(what: 'up' | 'notFailed', ref: EntryRef): readonly number[] {
    const key = `${what} ${ref.entry} ${ref.units?.join('+') ?? ''}`;
    const known = this.#counts.get(key);
    if (known !== undefined) return known;
    const subEntries = this.#fitted.subEntries(ref.entry);
    const lists = subEntries.length === 0 ? [[]] : subEntries.map(({ units }) => units);
    const counts = new Set<number>();
    for (const list of lists) {
      const asked = list.filter((unit) => ref.units === undefined || ref.units.includes(unit));
      for (const [at, down] of this.#downs.entries()) {
        const all = this.#touched[at]?.has(ref.entry) !== true;
        const left = (unit: string): boolean => counted(what, down.get(unitKey({ entry: ref.entry, unit })));
        counts.add(all ? asked.length : asked.filter(left).length);
      }
    }
    const rising = [...counts].sort((a, b) => a - b);
    this.#counts.set(key, rising);
    return rising;
  }

  /** A unit considered inoperative in a configuration that nobody knows may take more units along than are seen. */
  isDown(unit: Unit): Truth {
    const seen = agreed(this.#downs.map((down) => (down.has(unitKey(unit)) ? 'T' : 'F')));
    if (seen !== 'F') return seen;
    const mayTakeMore = this.considered().some(({ entry }) => this.#fitted.match(entry).kind === 'unknown');
    return mayTakeMore ? 'U' : 'F';
  }

  /** Units considered inoperative, by entry and unit. */
  considered(): ConsideredUnit[] {
    return (this.#considered ??= this.#findConsidered());
  }

  #findConsidered(): ConsideredUnit[] {
    const found = new Map<string, { unit: DownUnit; readings: number }>();
    for (const unit of this.#downs.flatMap((down) => [...down.values()])) {
      if (unit.cause.failed) continue;
      const seen = found.get(unitKey(unit));
      if (seen === undefined) found.set(unitKey(unit), { unit, readings: 1 });
      else seen.readings += 1;
    }
    return [...found.values()]
      .flatMap(({ unit: { entry, unit, cause }, readings }) =>
        cause.failed ? [] : [{ entry, unit, by: cause.by, row: cause.row, inAll: readings === this.#downs.length }],
      )
      .sort((a, b) => byCode(a.entry, b.entry) || byCode(a.unit, b.unit));
  }
}

function counted(what: 'up' | 'notFailed', down: DownUnit | undefined): boolean {
  return what === 'up' ? down === undefined : down?.cause.failed !== true;
}

function failedUnits(whole: readonly DefectReading[]): Unit[] {
  return whole.map(({ entry, unit }) => ({ entry: entry.number, unit }));
}

/** A failed unit brings the consequences of its defects' rows, a considered one those of the row chosen for it. */
function consequences(
  fitted: Fitted,
  whole: readonly DefectReading[],
  considered: ConsideredRows,
): (unit: Unit) => Consequence[] {
  return (unit) => {
    const read = whole.filter((reading) => reading.entry.number === unit.entry && reading.unit === unit.unit);
    const rows = read.length > 0 ? read.map(({ row }) => row) : [considered.get(unitKey(unit)) ?? null];
    return rows.filter((row) => row !== null).map((row) => ({ row: row.id, units: takenAlong(fitted, row) }));
  };
}

/** What a row calls considered inoperative, and the functions its NOTES say are lost. */
function takenAlong(fitted: Fitted, row: Row): Unit[] {
  const lost = (row.notes ?? []).flatMap((note) => note.lost ?? []);
  return [...(row.consideredInoperative ?? []), ...lost].flatMap((ref) => fitted.unitsOf(ref));
}
