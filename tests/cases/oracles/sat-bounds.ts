/**
 * The bounds of a proposal by an outside SAT solver: rows are Boolean variables, what is down is unrolled from what
 * failed, and each of the two values is two formulas, "certainly true" and "possibly true" (dual rail). lo and hi are the
 * greatest over all choices, so each is one question: is there a choice for which this formula holds?
 */
import { Solver } from 'logic-solver';
import {
  agreed,
  and,
  both,
  every,
  is,
  known,
  NO,
  not,
  or,
  some,
  UNKNOWN,
  when,
  YES,
  type Formula,
  type Rail,
  type Rails,
} from './rails.js';
import type {
  PlainCase,
  PlainCondition,
  PlainDefect,
  PlainLeaf,
  PlainRow,
  PlainSub,
  PlainUnits,
  Rank,
} from './plain-case.js';

/** A solver costs more than a case, so some share one: their variables have names of their own. */
const MOST_CASES = 25;

export class SatBounds {
  #solver = new Solver();
  #cases = 0;

  /** The greatest lo and the greatest hi of any choice. */
  of(plain: PlainCase): { lo: Rank; hi: Rank } {
    if (this.#cases >= MOST_CASES) [this.#solver, this.#cases] = [new Solver(), 0];
    this.#cases += 1;
    const encoding = new Encoding(plain, `case ${this.#cases}`);
    const { now, after } = encoding.value();
    this.#solver.require(...encoding.oneRowEach());
    const holds = (formula: Formula): boolean =>
      formula !== NO && (formula === YES || this.#solver.solveAssuming(formula) !== null);
    return {
      lo: holds(now.sure) ? 2 : holds(after.sure) ? 1 : 0,
      hi: holds(now.may) ? 2 : holds(after.may) ? 1 : 0,
    };
  }
}

class Encoding {
  readonly all: string[];
  readonly readings: { defect: PlainDefect; sub: PlainSub; unit: string }[][];
  readonly downs: Map<string, Formula>[];

  constructor(
    readonly s: PlainCase,
    readonly name: string,
  ) {
    this.all = s.entries.flatMap(({ number }) => this.units({ entry: number }));
    this.readings = s.defects.reduce<typeof this.readings>(
      (wholes, defect) => wholes.flatMap((whole) => this.ways(defect).map((way) => [...whole, way])),
      [[]],
    );
    this.downs = this.readings.map((_, at) => this.unrolled(at));
  }

  oneRowEach(): Formula[] {
    const exactlyOne = (atoms: string[]): Formula[] => [
      or(...atoms),
      ...atoms.flatMap((one, at) => atoms.slice(at + 1).map((other) => not(and(one, other)))),
    ];
    return [
      ...this.s.defects.flatMap((defect) => exactlyOne(this.ids(defect).map((id) => this.defectRow(defect, id)))),
      ...this.all.flatMap((unit) => {
        const rows = this.ownRows(unit);
        return rows.length === 0 ? [] : exactlyOne(rows.map(({ id }) => this.unitRow(unit, id)));
      }),
    ];
  }

  value(): Rails {
    const { unanswered, combinationAsked, judgements, defects } = this.s;
    const combination = judgements.find(({ judgement }) => judgement === 'combination');
    const asked = combinationAsked && defects.length > 1;
    return every([
      is(unanswered === 0),
      !asked ? is(true) : combination === undefined ? UNKNOWN : is(combination.accepted),
      ...defects.map((defect) =>
        agreed(
          this.ways(defect).map(({ sub, unit }) =>
            some(sub.rows.map((row) => when(this.defectRow(defect, row.id), this.item(sub, unit, row, defect)))),
          ),
        ),
      ),
      ...this.all.map((unit) => this.takenUnit(unit)),
    ]);
  }

  private subs(number: string): readonly PlainSub[] {
    const { subEntries } = this.s.entries.find((one) => one.number === number)!;
    const { fitted } = this.s;
    return subEntries.length === 1 || fitted === null ? subEntries : subEntries.filter(({ id }) => id === fitted);
  }

  private ways(defect: PlainDefect) {
    return this.subs(defect.entry).flatMap((sub) =>
      defect.units.filter((unit) => sub.units.includes(unit)).map((unit) => ({ defect, sub, unit })),
    );
  }

  private ids({ entry }: PlainDefect): string[] {
    return [...new Set(this.subs(entry).flatMap(({ rows }) => rows.map(({ id }) => id)))];
  }

  private units({ entry, units }: PlainUnits): string[] {
    return [...new Set(this.subs(entry).flatMap((sub) => sub.units))]
      .filter((unit) => units === undefined || units.includes(unit))
      .map((unit) => `${entry}/${unit}`);
  }

  /** None while the configuration is not known. */
  private ownRows(unit: string): readonly PlainRow[] {
    const subs = this.subs(unit.split('/')[0]!);
    return subs.length === 1 ? subs[0]!.rows : [];
  }

  private defectRow = ({ id }: PlainDefect, row: string): string => `${this.name} defect ${id} ${row}`;
  private unitRow = (unit: string, row: string): string => `${this.name} unit ${unit} ${row}`;

  private isFailed(at: number, unit: string): boolean {
    return this.readings[at]!.some((one) => `${one.defect.entry}/${one.unit}` === unit);
  }

  /** As many rounds as there are units: then nothing new can come. */
  private unrolled(at: number): Map<string, Formula> {
    let down = new Map<string, Formula>(this.all.map((unit) => [unit, this.isFailed(at, unit) ? YES : NO]));
    for (let round = 0; round < this.all.length; round++) {
      const before = down;
      const causes = new Map<string, Formula[]>();
      const cause = (row: PlainRow, chosen: Formula): void => {
        const refs = [...(row.consideredInoperative ?? []), ...(row.notes ?? []).flatMap(({ lost }) => lost ?? [])];
        for (const unit of refs.flatMap((ref) => this.units(ref)))
          causes.set(unit, [...(causes.get(unit) ?? []), chosen]);
      };
      for (const { defect, sub } of this.readings[at]!)
        for (const row of sub.rows) cause(row, this.defectRow(defect, row.id));
      for (const unit of this.all.filter((one) => !this.isFailed(at, one)))
        for (const row of this.ownRows(unit)) cause(row, and(before.get(unit)!, this.unitRow(unit, row.id)));
      down = new Map(this.all.map((unit) => [unit, or(before.get(unit)!, ...(causes.get(unit) ?? []))]));
    }
    return down;
  }

  private takenUnit(unit: string): Rails {
    const [entry = '', name = ''] = unit.split('/');
    const subs = this.subs(entry);
    const taken = this.downs.map((down, at) => (this.isFailed(at, unit) ? NO : down.get(unit)!));
    const [ever, always] = [or(...taken), and(...taken)];
    if (ever === NO) return is(true);
    const rows = this.ownRows(unit);
    const row = rows.length === 0 ? (subs.length > 1 ? UNKNOWN : is(false)) : this.unitItem(subs[0]!, name, rows);
    return some([both(known(not(ever))), row, every([UNKNOWN, both(known(not(always)))])]);
  }

  private unitItem(sub: PlainSub, unit: string, rows: readonly PlainRow[]): Rails {
    const entry = this.entryOf(sub);
    return some(rows.map((row) => when(this.unitRow(`${entry}/${unit}`, row.id), this.item(sub, unit, row, null))));
  }

  private entryOf(sub: PlainSub): string {
    return this.s.entries.find(({ subEntries }) => subEntries.includes(sub))!.number;
  }

  private item(sub: PlainSub, unit: string, row: PlainRow, defect: PlainDefect | null): Rails {
    const entry = this.entryOf(sub);
    const key = `${entry}/${row.id}`;
    const works = [...(row.procedures ?? []).map(({ id }) => id), ...(row.placard === undefined ? [] : ['placard'])];
    const isSigned = defect === null || (defect.signed && defect.row === row.id);
    return every([
      this.subs(entry).length === 1 ? is(true) : UNKNOWN,
      is(row.covers === undefined || row.covers.includes(unit)),
      is(this.s.directives.every((one) => one.entry !== entry)),
      row.incomplete === undefined ? is(true) : UNKNOWN,
      this.atLeast('up', { entry, units: sub.units }, row.numberRequired),
      ...(row.needsDown ?? []).flatMap((ref) => this.units(ref).map((one) => this.isDown(one))),
      ...(row.provisos ?? []).map((proviso) => this.condition(proviso.when)),
      ...(row.judgements ?? []).map(({ id }) => this.accepted(`${key}/${id}`)),
      ...works.map((id) => this.done(`${key}/${id}`, defect)),
      isSigned ? is(true) : { now: known(NO), after: known(YES) },
    ]);
  }

  private isDown(unit: string): Rails {
    const seen = agreed(this.downs.map((down) => both(known(down.get(unit)!))));
    const unsure = this.all.filter((one) => this.subs(one.split('/')[0]!).length > 1);
    const mayTakeMore = or(
      NO,
      ...unsure.flatMap((one) => this.downs.map((down, at) => (this.isFailed(at, one) ? NO : down.get(one)!))),
    );
    return {
      now: { ...seen.now, may: or(seen.now.may, mayTakeMore) },
      after: { ...seen.after, may: or(seen.after.may, mayTakeMore) },
    };
  }

  private atLeast(what: 'up' | 'notFailed', { entry, units }: PlainUnits, k: number): Rails {
    return agreed(
      this.subs(entry).flatMap((sub) => {
        const asked = sub.units.filter((unit) => units === undefined || units.includes(unit));
        return this.downs.map((down, at) => {
          const good = asked.map((unit): Formula => {
            const key = `${entry}/${unit}`;
            return what === 'up' ? not(down.get(key)!) : this.isFailed(at, key) ? NO : YES;
          });
          return both(known(kOf(good, k)));
        });
      }),
    );
  }

  private accepted(judgement: string): Rails {
    const answer = this.s.judgements.find((one) => one.judgement === judgement);
    return answer === undefined ? UNKNOWN : is(answer.accepted);
  }

  private users(work: string): { defect: PlainDefect; owes: Formula }[] {
    const [entry, row = ''] = work.split('/');
    return this.s.defects
      .filter((one) => one.entry === entry && this.ids(one).includes(row))
      .map((defect) => ({ defect, owes: this.defectRow(defect, row) }));
  }

  private done(work: string, defect: PlainDefect | null): Rails {
    const records = this.s.work.filter((one) => one.work === work);
    const named = records.filter((one) => one.defect !== undefined && (defect === null || one.defect === defect.id));
    const single = not(
      kOf(
        this.users(work).map(({ owes }) => owes),
        2,
      ),
    );
    const alone = standing([...named, ...records.filter((one) => one.defect === undefined)]);
    return some([when(single, alone), when(not(single), standing(named))]);
  }

  private condition(tree: PlainCondition): Rails {
    if ('all' in tree) return every(tree.all.map((part) => this.condition(part)));
    if ('any' in tree) return some(tree.any.map((part) => this.condition(part)));
    if (!('not' in tree)) return this.leaf(tree);
    const { now, after } = this.condition(tree.not);
    const denied = ({ sure, may }: Rail): Rail => ({ sure: not(may), may: not(sure) });
    return { now: denied(now), after: denied(after) };
  }

  private leaf({ fact, operator, value, params = {} }: PlainLeaf): Rails {
    if (params.work !== undefined) {
      const work = params.work;
      const users = this.users(work);
      const nobody = not(or(NO, ...users.map(({ owes }) => owes)));
      const each = users.map(({ defect, owes }) => some([both(known(not(owes))), this.done(work, defect)]));
      return every([some([both(known(not(nobody))), this.done(work, null)]), ...each]);
    }
    if (params.judgement !== undefined) return this.accepted(params.judgement);
    if (params.entry !== undefined) {
      const ref = { entry: params.entry, ...(params.units === undefined ? {} : { units: params.units }) };
      return this.atLeast(fact === 'entry.up' ? 'up' : 'notFailed', ref, Number(value));
    }
    const actual = this.s.facts[fact] ?? null;
    if (actual === null) return UNKNOWN;
    if (operator === 'in') return is((value as unknown[]).includes(actual));
    if (operator === 'notEqual') return is(actual !== value);
    return is(operator === 'lessThanInclusive' ? actual <= value : actual === value);
  }
}

/** At least k of them. */
function kOf(parts: readonly Formula[], k: number): Formula {
  if (k <= 0) return YES;
  const [first, ...rest] = parts;
  if (first === undefined) return NO;
  return or(and(first, kOf(rest, k - 1)), kOf(rest, k));
}

function standing(records: PlainCase['work']): Rails {
  if (records.some(({ doneAt }) => doneAt !== undefined)) return is(true);
  if (records.some(({ possible }) => possible === false)) return is(false);
  const isOpen = records.some(({ possible }) => possible === null);
  return { now: known(NO), after: isOpen ? { sure: NO, may: YES } : known(YES) };
}
