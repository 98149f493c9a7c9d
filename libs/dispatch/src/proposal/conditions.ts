/** The conditions of rows that other units can change, with everything else in them already judged. */
import { readFactKey, type EntryRef, type Procedure, type Proviso, type Row } from '#mel';
import { ALL_TRUE, type Code } from '../compiled/code.js';
import type { ClosureLeaf } from '../compiled/closure.js';
import { closureOf } from '../compiled/closures-of-mel.js';
import { codeOfValue } from '../compiled/leaf-test.js';
import type { Item } from '../conditions/item.js';
import { Unknown } from '../evaluate/marker.js';
import { personsAnswer } from '../frame/judgement-state.js';
import type { Fitted } from '../units/fitted.js';
import { unitKey } from '../units/unit.js';
import type { Atom, Condition, Variable } from './problem.js';
import type { Standings } from './standings.js';

/** Work is known only when all variables are: who may owe it is one of them. */
type Unfinished = Exclude<Atom, { kind: 'work' }> | { kind: 'work'; key: string };

export class Conditions {
  readonly #atoms: Unfinished[] = [];
  readonly #known = new Map<string, number>();

  constructor(
    readonly standings: Standings,
    readonly fitted: Fitted,
    readonly numbers: ReadonlyMap<string, number>,
    readonly groups: ReadonlyMap<string, number>,
  ) {}

  of(item: Item): Condition[] {
    const { defect, entry, subEntry, row } = item;
    if (defect?.basis !== undefined) return this.#trees(defect.basis.conditions, `${defect.id}/basis`);
    if (entry === null || subEntry === null || row === null) return [];
    const { numberRequired, provisos = [], needsDown = [] } = row;
    const ref = { entry: entry.number, units: subEntry.units };
    const key = `${entry.number}/${row.id}`;
    const enough = this.#atom(`up ${ref.entry}/${ref.units.join('+')} >= ${numberRequired}`, () =>
      this.#counted('up', ref, (count) => Number(count) >= numberRequired),
    );
    return [
      {
        kind: 'atom',
        atom: enough,
        id: `${key}/number`,
        text: `${numberRequired} of ${subEntry.units.length} ${entry.title} required for dispatch`,
      },
      ...needsDown.map((down): Condition => ({
        kind: 'needs-down',
        id: `${key}/down ${refKey(down)}`,
        text: `${this.fitted.mel.entry(down.entry)?.title ?? down.entry} is inoperative too`,
        // A unit that nothing can take along has no number, and is up.
        units: this.fitted.unitsOf(down).map((unit) => this.numbers.get(unitKey(unit)) ?? -1),
      })),
      ...this.#trees(provisos, key),
    ];
  }

  /** The atoms, in the order of their numbers. */
  atoms(variables: readonly Variable[]): Atom[] {
    return this.#atoms.map((atom) => (atom.kind === 'work' ? this.#work(atom, variables) : atom));
  }

  #trees(provisos: readonly Proviso[], row: string): Condition[] {
    return provisos.flatMap((proviso) => {
      const named = { id: `${row}/${proviso.id}`, text: proviso.text };
      const { leaves, combine } = closureOf(this.fitted.mel, proviso);
      const codes = new Uint8Array(leaves.length);
      const open: { at: number; atom: number }[] = [];
      for (const [at, leaf] of leaves.entries()) {
        const atom = this.#openLeaf(leaf);
        if (atom === null) codes[at] = this.#fixedLeaf(leaf);
        else open.push({ at, atom });
      }
      if (open.length > 0) return [{ ...named, kind: 'tree' as const, combine, leaves: codes, open }];
      const code = combine(codes);
      return code === ALL_TRUE ? [] : [{ ...named, kind: 'tree' as const, combine: () => code, leaves: codes, open }];
    });
  }

  #openLeaf(leaf: ClosureLeaf): number | null {
    const { key, plan, holds } = leaf;
    if (plan.fact !== 'entry.up' && plan.fact !== 'entry.notFailed' && plan.fact !== 'work.done') return null;
    const name = `${key} ${plan.operator} ${JSON.stringify(plan.expected)}`;
    const subject = readFactKey(key)?.subject ?? '';
    if (plan.fact === 'work.done') return this.#atom(name, () => ({ kind: 'work', key: subject }));
    const [entry = '', units] = subject.split('/');
    const ref: EntryRef = units === undefined ? { entry } : { entry, units: units.split('+') };
    return this.#atom(name, () => this.#counted(plan.fact === 'entry.up' ? 'up' : 'not-failed', ref, holds));
  }

  #fixedLeaf({ key, plan, holds }: ClosureLeaf): Code {
    const { frame } = this.standings;
    if (plan.fact !== 'judgement.accepted') return codeOfValue(frame.facts.view(key).value, holds);
    const { now, because } = personsAnswer(frame, readFactKey(key)?.subject ?? '', null);
    return codeOfValue(now === 'U' ? new Unknown(because) : now === 'T', holds);
  }

  #atom(key: string, make: () => Unfinished): number {
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    this.#known.set(key, this.#atoms.length);
    return this.#atoms.push(make()) - 1;
  }

  #counted(kind: 'up' | 'not-failed', ref: EntryRef, holds: ClosureLeaf['holds']): Unfinished {
    const subEntries = this.fitted.subEntries(ref.entry);
    const lists = subEntries.length === 0 ? [[]] : subEntries.map(({ units }) => units);
    return {
      kind,
      holds,
      lists: lists.map((list) => {
        const asked = list.filter((unit) => ref.units === undefined || ref.units.includes(unit));
        const units = asked.flatMap((unit) => this.numbers.get(unitKey({ entry: ref.entry, unit })) ?? []);
        return { units, others: asked.length - units.length };
      }),
    };
  }

  /** The loader lets a condition ask for work as "done" only, so the leaf is the work's own value. */
  #work({ key }: { key: string }, variables: readonly Variable[]): Atom {
    const [entry = '', row = '', id] = key.split('/');
    const procedure = this.#procedure(entry, row, id);
    const users = variables.flatMap(({ defect, rows }, variable) => {
      if (defect === null || !rows.some((one) => one.id === row) || defect.entry !== entry) return [];
      const { alone, shared } = this.standings.work(key, procedure, defect);
      return [[variable, { alone, shared }] as const];
    });
    const nobody = this.standings.work(key, procedure, null).alone;
    const group = this.groups.get(`${entry}/${row}`) ?? -1;
    return { kind: 'work', group, nobody, users: new Map(users) };
  }

  #procedure(entry: string, row: string, id: string | undefined): Procedure | null {
    const rows: Row[] = this.fitted.subEntries(entry).flatMap((subEntry) => subEntry.rows);
    return rows.find((one) => one.id === row)?.procedures?.find((one) => one.id === id) ?? null;
  }
}

function refKey({ entry, units = [] }: EntryRef): string {
  return [entry, ...units].join(' ');
}
