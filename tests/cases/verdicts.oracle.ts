/**
 * A second, two-valued reading of the verdict's meaning, written from its text: no unknown, no engine, no pairs folded by
 * anybody. It judges one completion of everything that is unknown, and knows nothing of libs/dispatch but the shape of a
 * situation. Values are ranks: 2 may fly, 1 may fly after work, 0 may not fly.
 */
import type { OpenDefect, Situation } from '#dispatch';
import type { Condition, ConditionLeaf, Entry, EntryRef, Mel, Row } from '#mel';

/** What is unknown in a situation, each with the values it may have. */
export type Unknowns = Record<string, readonly (string | number | boolean)[]>;
export type Completion = Record<string, string | number | boolean>;

const DOMAINS: Unknowns = {
  'flight.rvsm': [true, false],
  'flight.icing': ['none', 'forecast', 'known'],
  'flight.etopsMinutes': [0, 60, 120, 121],
};

export function unknownsOf(mel: Mel, { facts, defects, aircraft, work, judgements, settings }: Situation): Unknowns {
  const open: Unknowns = {};
  for (const [key, { value }] of Object.entries(facts)) if (value === null) open[key] = DOMAINS[key]!;
  for (const { id, units } of defects) if (units.length > 1) open[`unit ${id}`] = units;
  if (aircraft.configuration === null) {
    for (const entry of mel.entries) if (entry.subEntries.length > 1) open[`sub ${entry.number}`] = ['old', 'new'];
  }
  for (const one of work) if (one.possible === null) open[`possible ${one.work}`] = [true, false];
  const answered = new Set(judgements.map(({ judgement }) => judgement));
  for (const entry of mel.entries) {
    if (!answered.has(`${entry.number}/a/J1`)) open[`judgement ${entry.number}/a/J1`] = [true, false];
    for (const sub of entry.subEntries) {
      for (const row of sub.rows)
        if (row.incomplete) open[`text ${entry.number}/${sub.id}/${row.id}`] = [true, false];
    }
  }
  if (settings.combinationNeedsAcceptance && !answered.has('combination'))
    open['judgement combination'] = [true, false];
  return open;
}

export function rankOf(mel: Mel, situation: Situation, completion: Completion): number {
  const world = new World(mel, situation, completion);
  let best = 0;
  for (const rows of world.choices(new Map())) best = Math.max(best, world.rank(rows));
  return best;
}

/** Row ids of considered units by `entry/unit`. */
type Rows = ReadonlyMap<string, string>;

class World {
  constructor(
    readonly mel: Mel,
    readonly s: Situation,
    readonly known: Completion,
  ) {}

  /** Every way to give each unit that is only considered inoperative a row. */
  *choices(rows: Rows): Generator<Rows> {
    const failed = this.failed();
    const next = [...this.down(rows)].find((key) => !failed.has(key) && !rows.has(key));
    if (next === undefined) {
      yield rows;
      return;
    }
    for (const row of this.sub(next.split('/')[0]!).rows) yield* this.choices(new Map([...rows, [next, row.id]]));
  }

  rank(rows: Rows): number {
    const holds = (after: boolean): boolean =>
      this.gates() &&
      this.s.defects.every((defect) =>
        this.itemHolds(defect.entry!, this.unitOf(defect), defect.row, defect, rows, after),
      ) &&
      [...this.down(rows)]
        .filter((key) => !this.failed().has(key))
        .every((key) => this.itemHolds(key.split('/')[0]!, key.split('/')[1]!, rows.get(key)!, null, rows, after));
    return holds(false) ? 2 : holds(true) ? 1 : 0;
  }

  private gates(): boolean {
    const { gates, defects, settings, judgements } = this.s;
    const accepted = judgements.find(({ judgement }) => judgement === 'combination')?.accepted;
    const combined = !settings.combinationNeedsAcceptance || defects.length < 2;
    return (
      gates.unanswered.length === 0 &&
      defects.every(({ row }) => row !== null) &&
      (combined || (accepted ?? this.known['judgement combination']) === true)
    );
  }

  private sub(number: string): Entry['subEntries'][number] {
    const entry = this.mel.entry(number)!;
    if (entry.subEntries.length === 1) return entry.subEntries[0]!;
    const fitted = this.s.aircraft.configuration?.[0]?.toLowerCase() ?? this.known[`sub ${number}`];
    return entry.subEntries.find(({ id }) => id === fitted)!;
  }

  private unitOf({ id, units }: OpenDefect): string {
    return units.length === 1 ? units[0]! : String(this.known[`unit ${id}`]);
  }

  private failed(): Set<string> {
    return new Set(this.s.defects.map((defect) => `${defect.entry}/${this.unitOf(defect)}`));
  }

  /** By naive iteration: the whole rule again and again until nothing changes. */
  private down(rows: Rows): Set<string> {
    let set = this.failed();
    for (;;) {
      const next = new Set(set);
      for (const key of set)
        for (const row of this.rowsAt(key, rows)) for (const taken of this.takes(row)) next.add(taken);
      if (next.size === set.size) return set;
      set = next;
    }
  }

  private rowsAt(key: string, rows: Rows): Row[] {
    const [entry, unit] = key.split('/') as [string, string];
    const recorded = this.s.defects.filter((d) => d.entry === entry && this.unitOf(d) === unit).map(({ row }) => row);
    const ids = recorded.length > 0 ? recorded : [rows.get(key) ?? null];
    return this.sub(entry).rows.filter(({ id }) => ids.includes(id));
  }

  private takes(row: Row): string[] {
    const refs: EntryRef[] = [
      ...(row.consideredInoperative ?? []),
      ...(row.notes ?? []).flatMap(({ lost }) => lost ?? []),
    ];
    return refs.flatMap((ref) => this.units(ref).map((unit) => `${ref.entry}/${unit}`));
  }

  private units({ entry, units }: EntryRef): string[] {
    return this.sub(entry).units.filter((unit) => units === undefined || units.includes(unit));
  }

  private itemHolds(
    number: string,
    unit: string,
    id: string | null,
    defect: OpenDefect | null,
    rows: Rows,
    after: boolean,
  ): boolean {
    const sub = this.sub(number);
    const row = sub.rows.find((one) => one.id === id);
    if (row === undefined) return false;
    const key = `${number}/${row.id}`;
    const down = this.down(rows);
    const up = sub.units.filter((one) => !down.has(`${number}/${one}`)).length;
    return (
      (row.covers === undefined || row.covers.includes(unit)) &&
      up >= row.numberRequired &&
      this.s.directives.every(({ entry }) => entry !== number) &&
      (row.incomplete === undefined || this.known[`text ${number}/${sub.id}/${row.id}`] === true) &&
      (row.provisos ?? []).every(({ when }) => this.holds(when, rows, after)) &&
      (row.needsDown ?? []).every((ref) => this.units(ref).every((one) => down.has(`${ref.entry}/${one}`))) &&
      (row.judgements ?? []).every((asked) => this.accepted(`${key}/${asked.id}`)) &&
      (row.procedures ?? []).every((procedure) => this.done(`${key}/${procedure.id}`, after)) &&
      (row.placard === undefined || this.done(`${key}/placard`, after)) &&
      (defect === null || defect.signed || after)
    );
  }

  private accepted(judgement: string): boolean {
    const recorded = this.s.judgements.find((one) => one.judgement === judgement);
    return recorded === undefined ? this.known[`judgement ${judgement}`] === true : recorded.accepted;
  }

  private done(work: string, after: boolean): boolean {
    const record = this.s.work.find((one) => one.work === work);
    if (record?.doneAt !== undefined) return true;
    if (record?.possible === false) return false;
    return after && (record?.possible !== null || this.known[`possible ${work}`] === true);
  }

  private holds(condition: Condition, rows: Rows, after: boolean): boolean {
    if ('all' in condition) return condition.all.every((part) => this.holds(part, rows, after));
    if ('any' in condition) return condition.any.some((part) => this.holds(part, rows, after));
    if ('not' in condition) return !this.holds(condition.not, rows, after);
    return this.leaf(condition, rows, after);
  }

  private leaf({ fact, operator, value, params = {} }: ConditionLeaf, rows: Rows, after: boolean): boolean {
    if (params.work !== undefined) return this.done(params.work, after);
    if (params.judgement !== undefined) return this.accepted(params.judgement);
    if (params.entry !== undefined) {
      const ref = { entry: params.entry, ...(params.units === undefined ? {} : { units: params.units }) };
      const bad = fact === 'entry.up' ? this.down(rows) : this.failed();
      return this.units(ref).filter((unit) => !bad.has(`${ref.entry}/${unit}`)).length >= Number(value);
    }
    const actual = this.s.facts[fact]?.value ?? this.known[fact]!;
    if (operator === 'in') return (value as unknown[]).includes(actual);
    if (operator === 'notEqual') return actual !== value;
    return operator === 'lessThanInclusive' ? actual <= value : actual === value;
  }
}
