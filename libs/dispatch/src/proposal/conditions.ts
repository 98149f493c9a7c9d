/** The conditions of rows that other units can change, taken apart into trees and the atoms that they ask for. */
import { readFactKey, type EntryRef, type Procedure, type Proviso, type Row } from '#mel';
import type { ClosureLeaf } from '../compiled/closure.js';
import { closureOf } from '../compiled/closures-of-mel.js';
import type { Item } from '../conditions/item.js';
import type { Fitted } from '../units/fitted.js';
import { unitKey } from '../units/unit.js';
import type { Atom, Condition, WorkAtom } from './problem.js';

/** The group of a piece of work is known only when all rows are. */
type Unfinished = Exclude<Atom, { kind: 'work' }> | { kind: 'work'; key: string };

export class Conditions {
  readonly #atoms: Unfinished[] = [];
  readonly #known = new Map<string, number>();
  #trees = 0;

  constructor(
    readonly fitted: Fitted,
    readonly numbers: ReadonlyMap<string, number>,
    readonly groups: ReadonlyMap<string, number>,
  ) {}

  of(item: Item): Condition[] {
    const { defect, entry, subEntry, row } = item;
    if (defect?.basis !== undefined) return this.#treesOf(defect.basis.conditions, `${defect.id}/basis`);
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
      ...this.#treesOf(provisos, key),
    ];
  }

  /** The atoms, in the order of their numbers. */
  atoms(): Atom[] {
    return this.#atoms.map((atom) => (atom.kind === 'work' ? this.#work(atom) : atom));
  }

  #treesOf(provisos: readonly Proviso[], row: string): Condition[] {
    return provisos.map((proviso): Condition => {
      const { leaves, combine } = closureOf(this.fitted.mel, proviso);
      const open = leaves.flatMap((leaf, at) => {
        const atom = this.#openLeaf(leaf);
        return atom === null ? [] : [{ at, atom }];
      });
      const named = { id: `${row}/${proviso.id}`, text: proviso.text };
      return { ...named, kind: 'tree', number: this.#trees++, combine, leaves, open };
    });
  }

  #openLeaf(leaf: ClosureLeaf): number | null {
    const { key, asks, plan, holds } = leaf;
    if (plan.fact !== 'entry.up' && plan.fact !== 'entry.notFailed' && plan.fact !== 'work.done') return null;
    const subject = readFactKey(key)?.subject ?? '';
    if (plan.fact === 'work.done') return this.#atom(asks, () => ({ kind: 'work', key: subject }));
    const [entry = '', units] = subject.split('/');
    const ref: EntryRef = units === undefined ? { entry } : { entry, units: units.split('+') };
    return this.#atom(asks, () => this.#counted(plan.fact === 'entry.up' ? 'up' : 'not-failed', ref, holds));
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
  #work({ key }: { key: string }): WorkAtom {
    const [entry = '', row = '', id] = key.split('/');
    const group = this.groups.get(`${entry}/${row}`) ?? -1;
    return { kind: 'work', key, procedure: this.#procedure(entry, row, id), group };
  }

  #procedure(entry: string, row: string, id: string | undefined): Procedure | null {
    const rows: Row[] = this.fitted.subEntries(entry).flatMap((subEntry) => subEntry.rows);
    return rows.find((one) => one.id === row)?.procedures?.find((one) => one.id === id) ?? null;
  }
}

function refKey({ entry, units = [] }: EntryRef): string {
  return [entry, ...units].join(' ');
}
