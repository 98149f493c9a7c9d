/**
 * Every choice of rows of a small case, one after the other, each by three-valued logic written from the rules' text: no
 * engine, no bits, no pruning, no parts.
 */
import type { OracleChoice } from './order.js';
import type {
  PlainCase,
  PlainCondition,
  PlainDefect,
  PlainLeaf,
  PlainRow,
  PlainSub,
  PlainUnits,
} from './plain-case.js';

/** 0 false, 1 unknown, 2 true. */
type Three = 0 | 1 | 2;
interface Pair {
  now: Three;
  after: Three;
}

const both = (value: Three): Pair => ({ now: value, after: value });
const least = (pairs: readonly Pair[]): Pair => ({
  now: Math.min(2, ...pairs.map(({ now }) => now)) as Three,
  after: Math.min(2, ...pairs.map(({ after }) => after)) as Three,
});
const greatest = (pairs: readonly Pair[]): Pair => ({
  now: Math.max(0, ...pairs.map(({ now }) => now)) as Three,
  after: Math.max(0, ...pairs.map(({ after }) => after)) as Three,
});
const same = (values: readonly Three[]): Three =>
  values.length > 0 && values.every((value) => value === values[0]) ? values[0]! : 1;
const yes = (is: boolean): Three => (is ? 2 : 0);

/** With `counts`, only the conditions that it names by their ids. */
export function* everyChoice(
  plain: PlainCase,
  counts: (id: string) => boolean = () => true,
): Generator<OracleChoice> {
  const world = new World(plain, counts);
  for (const recorded of world.recordedRows(plain.defects)) yield* world.complete(recorded, new Map());
}

type Recorded = ReadonlyMap<string, string>;
type Considered = ReadonlyMap<string, string>;
/** One way to read all defects: sub-entry and unit of each. */
type Reading = readonly { defect: PlainDefect; sub: PlainSub; unit: string }[];

class World {
  readonly readings: Reading[];

  constructor(
    readonly s: PlainCase,
    readonly counts: (id: string) => boolean,
  ) {
    this.readings = s.defects.reduce<Reading[]>(
      (all, defect) => all.flatMap((one) => this.waysOf(defect).map((way) => [...one, way])),
      [[]],
    );
  }

  *recordedRows(defects: readonly PlainDefect[]): Generator<Recorded> {
    const [first, ...rest] = defects;
    if (first === undefined) return yield new Map();
    const ids = new Set(this.subs(first.entry).flatMap(({ rows }) => rows.map(({ id }) => id)));
    for (const id of ids) for (const others of this.recordedRows(rest)) yield new Map([[first.id, id], ...others]);
  }

  *complete(recorded: Recorded, considered: Considered): Generator<OracleChoice> {
    const downs = this.readings.map((reading) => this.down(reading, recorded, considered));
    const taken = [...new Set(downs.flatMap((down, at) => [...down].filter((key) => !this.failed(at).has(key))))];
    const next = taken.sort().find((key) => !considered.has(key) && this.rowsOfUnit(key).length > 0);
    if (next === undefined) return yield new Judge(this, recorded, considered, downs, taken).choice();
    for (const { id } of this.rowsOfUnit(next)) yield* this.complete(recorded, new Map([...considered, [next, id]]));
  }

  subs(number: string): readonly PlainSub[] {
    const all = this.s.entries.find((one) => one.number === number)!.subEntries;
    const { fitted } = this.s;
    return all.length === 1 || fitted === null ? all : all.filter(({ id }) => id === fitted);
  }

  waysOf(defect: PlainDefect): { defect: PlainDefect; sub: PlainSub; unit: string }[] {
    return this.subs(defect.entry).flatMap((sub) =>
      defect.units.filter((unit) => sub.units.includes(unit)).map((unit) => ({ defect, sub, unit })),
    );
  }

  rowsOfUnit(key: string): readonly PlainRow[] {
    const subs = this.subs(key.split('/')[0]!);
    return subs.length === 1 ? subs[0]!.rows : [];
  }

  failed(at: number): Set<string> {
    return new Set(this.readings[at]!.map(({ defect, unit }) => `${defect.entry}/${unit}`));
  }

  units({ entry, units }: PlainUnits): string[] {
    return [...new Set(this.subs(entry).flatMap((sub) => sub.units))]
      .filter((unit) => units === undefined || units.includes(unit))
      .map((unit) => `${entry}/${unit}`);
  }

  private down(reading: Reading, recorded: Recorded, considered: Considered): Set<string> {
    let set = new Set(reading.map(({ defect, unit }) => `${defect.entry}/${unit}`));
    for (;;) {
      const next = new Set(set);
      for (const key of set) {
        const own = reading.filter(({ defect, unit }) => `${defect.entry}/${unit}` === key);
        const rows =
          own.length > 0
            ? own.flatMap(({ defect, sub }) => sub.rows.filter(({ id }) => id === recorded.get(defect.id)))
            : this.rowsOfUnit(key).filter(({ id }) => id === considered.get(key));
        for (const row of rows) {
          const refs = [...(row.consideredInoperative ?? []), ...(row.notes ?? []).flatMap(({ lost }) => lost ?? [])];
          for (const unit of refs.flatMap((ref) => this.units(ref))) next.add(unit);
        }
      }
      if (next.size === set.size) return set;
      set = next;
    }
  }
}

class Judge {
  readonly acts = new Map<string, number | null>();

  constructor(
    readonly w: World,
    readonly recorded: Recorded,
    readonly considered: Considered,
    readonly downs: readonly Set<string>[],
    readonly taken: readonly string[],
  ) {}

  choice(): OracleChoice {
    const { now, after } = least([
      ...this.w.s.defects.map((defect) => this.defect(defect)),
      ...this.taken.map((key) => this.takenUnit(key)),
      this.gates(),
    ]);
    const times = [...this.acts.values()];
    return {
      lo: now === 2 ? 2 : after === 2 ? 1 : 0,
      hi: now > 0 ? 2 : after > 0 ? 1 : 0,
      changes: this.w.s.defects.filter((one) => !this.isSigned(one)).length,
      untimed: times.filter((one) => one === null).length,
      minutes: times.reduce<number>((sum, one) => sum + (one ?? 0), 0),
      list: [
        ...this.w.s.defects.map((one): OracleChoice['list'][number] => [
          one.entry,
          one.units.join('+'),
          one.id,
          this.recorded.get(one.id)!,
        ]),
        ...[...this.considered].map(([key, row]): OracleChoice['list'][number] => {
          const [entry = '', unit = ''] = key.split('/');
          return [entry, unit, '', row];
        }),
      ].sort((a, b) => (a.slice(0, 3).join('\u0001') < b.slice(0, 3).join('\u0001') ? -1 : 1)),
    };
  }

  private isSigned(defect: PlainDefect): boolean {
    return defect.signed && defect.row === this.recorded.get(defect.id);
  }

  private gates(): Pair {
    const { unanswered, combinationAsked, judgements, defects } = this.w.s;
    if (unanswered > 0) return both(0);
    if (!combinationAsked || defects.length < 2) return both(2);
    const answer = judgements.find(({ judgement }) => judgement === 'combination');
    return both(answer === undefined ? 1 : yes(answer.accepted));
  }

  /** Of several units exactly one: all must agree. */
  private defect(defect: PlainDefect): Pair {
    const values = this.w.waysOf(defect).map(({ sub, unit }) => {
      const row = sub.rows.find(({ id }) => id === this.recorded.get(defect.id));
      const known = this.w.subs(defect.entry).length === 1;
      return row === undefined ? both(0) : this.item(sub, unit, row, defect, known);
    });
    return { now: same(values.map(({ now }) => now)), after: same(values.map(({ after }) => after)) };
  }

  private takenUnit(key: string): Pair {
    const [entry = '', unit = ''] = key.split('/');
    const subs = this.w.subs(entry);
    const row = this.w.rowsOfUnit(key).find(({ id }) => id === this.considered.get(key));
    const none = this.w.counts(`${key}/basis`) ? both(subs.length > 1 ? 1 : 0) : both(2);
    const value = row === undefined ? none : this.item(subs[0]!, unit, row, null, true);
    const always = this.downs.every((down, at) => down.has(key) && !this.w.failed(at).has(key));
    return always ? value : greatest([value, both(1)]);
  }

  private item(sub: PlainSub, unit: string, row: PlainRow, defect: PlainDefect | null, known: boolean): Pair {
    const entry = this.w.s.entries.find(({ subEntries }) => subEntries.includes(sub))!.number;
    const key = `${entry}/${row.id}`;
    const works = [
      ...(row.procedures ?? []).map(({ id, minutes }) => ({ work: `${key}/${id}`, minutes: minutes ?? null })),
      ...(row.placard === undefined ? [] : [{ work: `${key}/placard`, minutes: 0 }]),
    ];
    for (const { work, minutes } of works) {
      const { now, after } = this.done(work, defect);
      if (now !== 2 && after !== 0) this.acts.set(`${work} ${defect?.id ?? ''}`, minutes);
    }
    const conditions: [id: string, value: Pair][] = [
      ['configuration', both(known ? 2 : 1)],
      ['covers', both(yes(row.covers === undefined || row.covers.includes(unit)))],
      ...this.w.s.directives.map((one): [string, Pair] => [one.number, both(yes(one.entry !== entry))]),
      ['text', both(row.incomplete === undefined ? 2 : 1)],
      ['number', both(this.atLeast('up', { entry, units: sub.units }, row.numberRequired))],
      ...(row.needsDown ?? []).map((ref): [string, Pair] => [
        `down ${[ref.entry, ...(ref.units ?? [])].join(' ')}`,
        least(this.w.units(ref).map((one) => both(this.isDown(one)))),
      ]),
      ...(row.provisos ?? []).map((one): [string, Pair] => [one.id, this.condition(one.when)]),
      ...(row.judgements ?? []).map(({ id }): [string, Pair] => [id, both(this.accepted(`${key}/${id}`))]),
      ...works.map(({ work }): [string, Pair] => [work.split('/')[2]!, this.done(work, defect)]),
      ['signature', defect === null || this.isSigned(defect) ? both(2) : { now: 0, after: 2 }],
    ];
    return least(conditions.flatMap(([id, value]) => (this.w.counts(`${key}/${id}`) ? [value] : [])));
  }

  private isDown(key: string): Three {
    const seen = same(this.downs.map((down) => yes(down.has(key))));
    const mayTakeMore = this.taken.some((one) => this.w.subs(one.split('/')[0]!).length > 1);
    return seen === 0 && mayTakeMore ? 1 : seen;
  }

  private atLeast(what: 'up' | 'notFailed', { entry, units }: PlainUnits, k: number): Three {
    const answers = this.w.subs(entry).flatMap((sub) => {
      const asked = sub.units.filter((unit) => units === undefined || units.includes(unit));
      return this.downs.map((down, at) => {
        const bad = what === 'up' ? down : this.w.failed(at);
        return yes(asked.filter((unit) => !bad.has(`${entry}/${unit}`)).length >= k);
      });
    });
    return same(answers);
  }

  private accepted(judgement: string): Three {
    const answer = this.w.s.judgements.find((one) => one.judgement === judgement);
    return answer === undefined ? 1 : yes(answer.accepted);
  }

  /** A record without a defect's name serves one defect under that row, not two. */
  private done(work: string, defect: PlainDefect | null): Pair {
    const users = this.usersOf(work);
    const records = this.w.s.work.filter(
      (one) =>
        one.work === work &&
        (one.defect === undefined ? users.length < 2 : defect === null || one.defect === defect.id),
    );
    if (records.some(({ doneAt }) => doneAt !== undefined)) return both(2);
    if (records.some(({ possible }) => possible === false)) return both(0);
    return { now: 0, after: records.some(({ possible }) => possible === null) ? 1 : 2 };
  }

  private usersOf(work: string): PlainDefect[] {
    const [entry, row] = work.split('/');
    return this.w.s.defects.filter((one) => one.entry === entry && this.recorded.get(one.id) === row);
  }

  private condition(when: PlainCondition): Pair {
    if ('all' in when) return least(when.all.map((part) => this.condition(part)));
    if ('any' in when) return greatest(when.any.map((part) => this.condition(part)));
    if ('not' in when) {
      const { now, after } = this.condition(when.not);
      return { now: (2 - now) as Three, after: (2 - after) as Three };
    }
    return this.leaf(when);
  }

  private leaf({ fact, operator, value, params = {} }: PlainLeaf): Pair {
    if (params.work !== undefined) {
      const users = this.usersOf(params.work);
      return least((users.length > 0 ? users : [null]).map((user) => this.done(params.work!, user)));
    }
    if (params.judgement !== undefined) return both(this.accepted(params.judgement));
    if (params.entry !== undefined) {
      const ref = { entry: params.entry, ...(params.units === undefined ? {} : { units: params.units }) };
      return both(this.atLeast(fact === 'entry.up' ? 'up' : 'notFailed', ref, Number(value)));
    }
    const actual = this.w.s.facts[fact] ?? null;
    if (actual === null) return both(1);
    if (operator === 'in') return both(yes((value as unknown[]).includes(actual)));
    if (operator === 'notEqual') return both(yes(actual !== value));
    return both(yes(operator === 'lessThanInclusive' ? actual <= value : actual === value));
  }
}
