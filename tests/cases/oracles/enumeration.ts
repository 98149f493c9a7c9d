/**
 * The verdict's meaning with nothing unknown in it: whatever is not known is given each of its values in turn (the values
 * of facts, not the truth of conditions), every choice of rows is tried, and each is judged by plain yes and no.
 *
 * Two questions: what is good whatever turns out, under ONE choice (rule 7); and what could be reached if the choice might
 * wait until all is known, which the verdict does not promise.
 */
import type {
  PlainCase,
  PlainCondition,
  PlainDefect,
  PlainLeaf,
  PlainRow,
  PlainSub,
  PlainUnits,
  Rank,
  Scalar,
} from './plain-case.js';
import { Trail } from './trail.js';

/** One value between all thresholds that the random cases ask for, and those themselves. */
const DOMAINS: Readonly<Record<string, readonly Scalar[]>> = {
  'flight.rvsm': [true, false],
  'flight.icing': ['none', 'forecast', 'known'],
  'flight.etopsMinutes': [0, 60, 120, 121, 180],
};

export interface Enumerated {
  /** The greatest, over all choices, of the least and of the greatest value of one choice over all completions. */
  lo: Rank;
  hi: Rank;
  /** True when something was asked that is not known. */
  isOpen: boolean;
}

export function boundsOfOneChoice(plain: PlainCase): Enumerated {
  let [lo, hi]: [Rank, Rank] = [0, 0];
  let isOpen = false;
  const known = new Known(plain);
  const choice = new Trail();
  do {
    let [least, most]: [Rank, Rank] = [2, 0];
    const completion = new Trail();
    do {
      const rank = rankOf(known, choice, completion);
      if (rank < least) least = rank;
      if (rank > most) most = rank;
    } while ((least > lo || Math.max(most, hi) < 2) && completion.next());
    isOpen ||= completion.hasAsked;
    if (least > lo) lo = least;
    if (most > hi) hi = most;
  } while (lo < 2 && choice.next());
  return { lo, hi, isOpen };
}

/** The least over all completions of what the best choice for that completion reaches. */
export function leastOfBestChoices(plain: PlainCase): Rank {
  const known = new Known(plain);
  let least: Rank = 2;
  const completion = new Trail();
  do {
    let best: Rank = 0;
    const choice = new Trail();
    do {
      const rank = rankOf(known, choice, completion);
      if (rank > best) best = rank;
    } while (best < least && choice.next());
    if (best < least) least = best;
  } while (least > 0 && completion.next());
  return least;
}

function rankOf(known: Known, choice: Trail, completion: Trail): Rank {
  const value = new World(known, choice, completion).value();
  return (value & NOW) > 0 ? 2 : value > 0 ? 1 : 0;
}

/** What is the same in every completion, looked up once. */
class Known {
  readonly subs = new Map<string, readonly PlainSub[]>();
  /** Ids of the rows that an entry may offer. */
  readonly rows = new Map<string, readonly string[]>();

  constructor(readonly s: PlainCase) {
    for (const { number, subEntries } of s.entries) {
      const isKnown = subEntries.length === 1 || s.fitted === null;
      const subs = isKnown ? subEntries : subEntries.filter(({ id }) => id === s.fitted);
      this.subs.set(number, subs);
      this.rows.set(number, [...new Set(subs.flatMap((sub) => sub.rows.map(({ id }) => id)))]);
    }
  }
}

/** Two bits: holds now, holds after work. */
type Bits = number;
const NOW = 1;
const AFTER = 2;
const BOTH = 3;
const is = (yes: boolean): Bits => (yes ? BOTH : 0);

/** One completion under one choice. */
class World {
  readonly failed = new Map<string, PlainDefect[]>();
  readonly down = new Set<string>();

  readonly #rows = new Map<string, PlainRow | undefined>();
  readonly s: PlainCase;

  constructor(
    readonly known: Known,
    readonly choice: Trail,
    readonly completion: Trail,
  ) {
    this.s = known.s;
  }

  value(): Bits {
    const { s } = this;
    let value = this.gates();
    if (value === 0) return value;
    for (const defect of s.defects) {
      const key = `${defect.entry}/${this.unitOf(defect)}`;
      this.failed.set(key, [...(this.failed.get(key) ?? []), defect]);
    }
    this.spread();
    for (const key of this.down) {
      const [entry = '', unit = ''] = key.split('/');
      const defects = this.failed.get(key) ?? [null];
      for (const defect of defects) {
        const row = this.rowOf(key, defect);
        value &= row === undefined ? 0 : this.item(entry, unit, row, defect);
        if (value === 0) return value;
      }
    }
    return value;
  }

  private gates(): Bits {
    const { unanswered, combinationAsked, defects } = this.s;
    return is(unanswered === 0) & (combinationAsked && defects.length > 1 ? this.accepted('combination') : BOTH);
  }

  private sub(number: string): PlainSub {
    const subs = this.known.subs.get(number)!;
    return subs.length === 1 ? subs[0]! : this.completion.ask(`configuration ${number}`, subs);
  }

  private unitOf({ id, units }: PlainDefect): string {
    return units.length === 1 ? units[0]! : this.completion.ask(`unit ${id}`, units);
  }

  /** A row that the aircraft's own configuration does not offer is none. */
  private rowOf(key: string, defect: PlainDefect | null): PlainRow | undefined {
    const question = defect === null ? key : defect.id;
    if (this.#rows.has(question)) return this.#rows.get(question);
    const number = key.slice(0, key.indexOf('/'));
    const ids = this.known.rows.get(number)!;
    const isFixed = defect !== null && this.s.isRowFixed === true;
    const chosen = isFixed ? defect.row : ids.length === 0 ? null : this.choice.ask(`row for ${question}`, ids);
    const row = this.sub(number).rows.find(({ id }) => id === chosen);
    this.#rows.set(question, row);
    return row;
  }

  private spread(): void {
    const waiting = [...this.failed.keys()];
    for (let key = waiting.pop(); key !== undefined; key = waiting.pop()) {
      if (this.down.has(key)) continue;
      this.down.add(key);
      for (const defect of this.failed.get(key) ?? [null]) {
        const row = this.rowOf(key, defect);
        for (const ref of row?.consideredInoperative ?? []) waiting.push(...this.units(ref));
        for (const { lost = [] } of row?.notes ?? []) for (const ref of lost) waiting.push(...this.units(ref));
      }
    }
  }

  private units({ entry, units }: PlainUnits): string[] {
    return this.sub(entry)
      .units.filter((unit) => units === undefined || units.includes(unit))
      .map((unit) => `${entry}/${unit}`);
  }

  private atLeast(ref: PlainUnits, isBad: (unit: string) => boolean, least: number): Bits {
    return is(this.units(ref).filter((unit) => !isBad(unit)).length >= least);
  }

  private item(entry: string, unit: string, row: PlainRow, defect: PlainDefect | null): Bits {
    const key = `${entry}/${row.id}`;
    const isDown = (one: string): boolean => this.down.has(one);
    let value = is(row.covers === undefined || row.covers.includes(unit));
    value &= is(this.s.directives.every((one) => one.entry !== entry));
    value &= this.atLeast({ entry }, isDown, row.numberRequired);
    for (const ref of row.needsDown ?? []) value &= is(this.units(ref).every(isDown));
    if (defect !== null && !(defect.signed && defect.row === row.id)) value &= AFTER;
    for (const { id } of row.procedures ?? []) value &= this.done(`${key}/${id}`, defect);
    if (row.placard !== undefined) value &= this.done(`${key}/placard`, defect);
    for (const { when } of row.provisos ?? []) value &= value === 0 ? 0 : this.holds(when);
    for (const { id } of row.judgements ?? []) value &= value === 0 ? 0 : this.accepted(`${key}/${id}`);
    if (value === 0 || row.incomplete === undefined) return value;
    return value & is(this.completion.ask(`text ${entry}/${this.sub(entry).id}/${row.id}`, [true, false]));
  }

  private accepted(judgement: string): Bits {
    const answer = this.s.judgements.find((one) => one.judgement === judgement);
    return is(answer === undefined ? this.completion.ask(`judged ${judgement}`, [true, false]) : answer.accepted);
  }

  /** A record without a defect's name serves one defect under that row, not two. */
  private done(work: string, defect: PlainDefect | null): Bits {
    const users = this.users(work);
    const records = this.s.work.filter(
      (one) =>
        one.work === work &&
        (one.defect === undefined ? users.length < 2 : defect === null || one.defect === defect.id),
    );
    if (records.some(({ doneAt }) => doneAt !== undefined)) return BOTH;
    if (records.some(({ possible }) => possible === false)) return 0;
    if (records.every(({ possible }) => possible !== null)) return AFTER;
    return this.completion.ask(`possible ${work} ${defect?.id ?? ''}`, [true, false]) ? AFTER : 0;
  }

  private users(work: string): PlainDefect[] {
    const [entry = '', row = ''] = work.split('/');
    return this.s.defects.filter((one) => {
      if (one.entry !== entry) return false;
      return this.rowOf(`${entry}/${this.unitOf(one)}`, one)?.id === row;
    });
  }

  private holds(condition: PlainCondition): Bits {
    if ('all' in condition)
      return condition.all.reduce((all, part) => (all === 0 ? 0 : all & this.holds(part)), BOTH);
    if ('any' in condition)
      return condition.any.reduce((any, part) => (any === BOTH ? any : any | this.holds(part)), 0);
    return 'not' in condition ? BOTH ^ this.holds(condition.not) : this.leaf(condition);
  }

  private leaf({ fact, operator, value, params = {} }: PlainLeaf): Bits {
    const { work, judgement, entry, units } = params;
    if (work !== undefined) {
      const users = this.users(work);
      return (users.length > 0 ? users : [null]).reduce((all, user) => all & this.done(work, user), BOTH);
    }
    if (judgement !== undefined) return this.accepted(judgement);
    if (entry !== undefined) {
      const bad = fact === 'entry.up' ? this.down : this.failed;
      return this.atLeast({ entry, ...(units && { units }) }, (unit) => bad.has(unit), Number(value));
    }
    const actual = this.s.facts[fact] ?? this.completion.ask(`fact ${fact}`, DOMAINS[fact]!);
    if (operator === 'in') return is((value as readonly Scalar[]).includes(actual));
    if (operator === 'notEqual') return is(actual !== value);
    return is(operator === 'lessThanInclusive' ? actual <= value : actual === value);
  }
}
