/** Makes a problem of a situation: finds every unit that may be down and every row that may be chosen for it. */
import type { EntryRef, Mel, Row } from '#mel';
import { ALL_FALSE, ALL_UNKNOWN } from '../compiled/code.js';
import { Fitted } from '../units/fitted.js';
import { byCode, unitKey, type Unit } from '../units/unit.js';
import type { OpenDefect, Situation } from '../situation.js';
import type { MayTake } from './answer-cases.js';
import { Conditions } from './conditions.js';
import type { Choosable, Option, Problem, Variable } from './problem.js';
import { isChange, rowsOfDefect, underRow } from './rows-of-defect.js';
import type { Item } from '../conditions/item.js';
import { defectItems, unitItem } from './items.js';
import { basisOf, Standings } from './standings.js';

export interface Offered {
  /** All rows of each entry, or only the recorded one. Considered-inoperative units may take any. */
  rows?: 'any' | 'recorded';
  /** Of these, the rows that count. */
  mayTake?: MayTake;
}

export function buildProblem(mel: Mel, situation: Situation, offered: Offered = {}): Problem {
  return new Builder(mel, situation, offered).build();
}

/** What a row calls considered inoperative, and the functions its NOTES say are lost. */
function takenBy(row: Row): EntryRef[] {
  return [...(row.consideredInoperative ?? []), ...(row.notes ?? []).flatMap((note) => note.lost ?? [])];
}

class Builder {
  readonly #fitted: Fitted;
  readonly #defects: readonly OpenDefect[];
  readonly #groups = new Map<string, number>();
  #options = 0;

  constructor(
    readonly mel: Mel,
    readonly situation: Situation,
    readonly offered: Offered,
  ) {
    this.#fitted = new Fitted(mel, situation.aircraft);
    this.#defects = [...situation.defects].sort((a, b) => byCode(a.id, b.id));
  }

  build(): Problem {
    const { units, taken } = this.#reach();
    const numbers = new Map(units.map((unit, at) => [unitKey(unit), at]));
    const conditions = new Conditions(this.#fitted, numbers, this.#groups);
    const bare = [
      ...this.#defects.map((defect) => this.#ofDefect(defect, conditions, numbers)),
      ...taken.map((unit) => this.#ofUnit(unit, conditions, numbers)),
    ].sort((a, b) => byPlace(a.place, b.place));
    const groups = [...this.#groups.values()].map((group) =>
      bare.flatMap(({ defect, rows }, variable) =>
        defect === null ? [] : rows.flatMap((one, row) => (one.group === group ? [{ variable, row }] : [])),
      ),
    );
    const ofUnit = units.map((_, unit) => bare.findIndex((one) => one.unit === unit));
    const isUnsure = units.map(({ entry }) => this.#fitted.match(entry).kind === 'unknown');
    const said = new Standings(this.mel, this.situation, false);
    return { units, variables: bare, ofUnit, atoms: conditions.atoms(), groups, isUnsure, said };
  }

  /** Failed units, and every unit that a row of any of them may take along, to any depth. */
  #reach(): { units: Unit[]; taken: Unit[] } {
    const seen = new Map<string, Unit>();
    const taken = new Map<string, Unit>();
    const waiting: Unit[] = this.#defects.flatMap(({ entry, units }) =>
      entry === null ? [] : this.#fitted.unitsOf({ entry, units }),
    );
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
      if (seen.has(unitKey(next))) continue;
      seen.set(unitKey(next), next);
      for (const row of this.#fitted.subEntries(next.entry).flatMap(({ rows }) => rows)) {
        for (const unit of takenBy(row).flatMap((ref) => this.#fitted.unitsOf(ref))) {
          taken.set(unitKey(unit), unit);
          waiting.push(unit);
        }
      }
    }
    const sorted = (found: Map<string, Unit>): Unit[] =>
      [...found.values()].sort((a, b) => byCode(a.entry, b.entry) || byCode(a.unit, b.unit));
    return { units: sorted(seen), taken: sorted(taken) };
  }

  #ofDefect(defect: OpenDefect, conditions: Conditions, numbers: ReadonlyMap<string, number>): Variable {
    const isRecorded = this.offered.rows === 'recorded';
    const { mayTake = () => true } = this.offered;
    const offered = isRecorded ? [defect.row] : rowsOfDefect(defect, this.#fitted);
    const rows = offered.flatMap((id): Choosable[] => {
      if (!mayTake(defect, id)) return [];
      const items = defectItems(underRow(defect, id), id, this.#fitting);
      const one = {
        id,
        row: null,
        group: id === null || defect.entry === null ? null : this.#group(defect.entry, id),
        isChange: id !== null && isChange(defect, id),
        options: items.map((item) => this.#option(item, id, conditions, numbers)),
      };
      return [one];
    });
    const entry = defect.entry ?? '';
    const place = [entry, defect.units.join('+'), defect.id] as const;
    const basis = basisOf({ entry: null, unit: '', defect });
    return { defect, unit: null, entry, place, rows, rowless: ALL_FALSE, basis };
  }

  #ofUnit(unit: Unit, conditions: Conditions, numbers: ReadonlyMap<string, number>): Variable {
    const match = this.#fitted.match(unit.entry);
    const offered = match.kind === 'one' ? [...match.subEntry.rows].sort((a, b) => byCode(a.id, b.id)) : [];
    const rows = offered.map((row): Choosable => {
      const options = [this.#option(unitItem(unit, row, this.#fitting), row.id, conditions, numbers)];
      return {
        id: row.id,
        row,
        group: this.#groups.get(`${unit.entry}/${row.id}`) ?? null,
        isChange: false,
        options,
      };
    });
    return {
      defect: null,
      unit: numbers.get(unitKey(unit)) ?? null,
      entry: unit.entry,
      place: [unit.entry, unit.unit, ''],
      rows,
      rowless: match.kind === 'unknown' ? ALL_UNKNOWN : ALL_FALSE,
      basis: basisOf({ entry: this.#fitted.mel.entry(unit.entry) ?? null, unit: unit.unit, defect: null }),
    };
  }

  #option(item: Item, id: string | null, conditions: Conditions, numbers: ReadonlyMap<string, number>): Option {
    const units = item.row === null ? [] : takenBy(item.row).flatMap((ref) => this.#fitted.unitsOf(ref));
    const { entry, unit } = item;
    return {
      number: this.#options++,
      row: id,
      item,
      unit: entry === null ? null : (numbers.get(unitKey({ entry: entry.number, unit })) ?? null),
      takes: units.flatMap((one) => numbers.get(unitKey(one)) ?? []),
      conditions: conditions.of(item),
    };
  }

  get #fitting() {
    return { fitted: this.#fitted, mel: this.mel };
  }

  #group(entry: string, row: string): number {
    const key = `${entry}/${row}`;
    const known = this.#groups.get(key);
    if (known !== undefined) return known;
    this.#groups.set(key, this.#groups.size);
    return this.#groups.size - 1;
  }
}

function byPlace(a: Variable['place'], b: Variable['place']): number {
  return byCode(a[0], b[0]) || byCode(a[1], b[1]) || byCode(a[2], b[2]);
}
