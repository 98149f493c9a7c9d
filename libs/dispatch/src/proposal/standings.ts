/** What one situation says of the rows of a problem: of each row alone, and when another defect of the entry takes it too. */
import { readFactKey, type Mel } from '#mel';
import { ALL_FALSE, ALL_TRUE, codeOf, type Code } from '../compiled/code.js';
import type { ClosureLeaf } from '../compiled/closure.js';
import { closureOf } from '../compiled/closures-of-mel.js';
import { codeOfValue } from '../compiled/leaf-test.js';
import type { Item, Judged, RowItem } from '../conditions/item.js';
import { FIXED_RULES } from '../conditions/judge-item.js';
import { otherBasis } from '../conditions/recorded-basis.js';
import { Unknown } from '../evaluate/marker.js';
import { Frame } from '../frame/frame.js';
import { personsAnswer } from '../frame/judgement-state.js';
import { workAnswer } from '../frame/work-state.js';
import type { OpenDefect, Situation } from '../situation.js';
import type { WorkToDo } from '../verdict.js';
import type { Act, Named, Option, Said, Standing, Tree, WorkAtom } from './problem.js';
import { underRow } from './rows-of-defect.js';

/** A record of work that names no defect counts only while one defect alone is under the row. */
export class Standings implements Said {
  readonly mayChange = false;
  readonly #mel: Mel;
  readonly #situation: Situation;
  readonly #isSigned: boolean;
  readonly #defects: ReadonlyMap<string, OpenDefect>;
  /** No defect under any row. */
  readonly #frame: Frame;
  readonly #sharedFrames = new Map<string, Frame>();
  /** Rows with a record of work that names no defect, as `<entry>/<row>`. */
  readonly #unnamed: ReadonlySet<string>;
  /** By number of option, and of tree. */
  readonly #alone: Standing[] = [];
  readonly #shared: Standing[] = [];
  readonly #leaves: Uint8Array[] = [];
  readonly #work = new Map<string, Code>();

  /** With `isSigned` every row counts as signed, whichever it is. */
  constructor(mel: Mel, situation: Situation, isSigned: boolean) {
    this.#mel = mel;
    this.#situation = situation;
    this.#isSigned = isSigned;
    this.#defects = new Map(situation.defects.map((defect) => [defect.id, defect]));
    this.#frame = this.#framed(() => null);
    const unnamed = situation.work.filter(({ defect }) => defect === undefined);
    this.#unnamed = new Set(unnamed.map(({ work }) => work.slice(0, work.lastIndexOf('/'))));
  }

  standing(option: Option, isShared: boolean): Standing {
    const { number } = option;
    if (isShared) return (this.#shared[number] ??= this.#sharedStanding(option));
    return (this.#alone[number] ??= standing(this.#itemOf(option), this.#frame));
  }

  #sharedStanding(option: Option): Standing {
    const { row, item } = option;
    const entry = item.entry?.number;
    if (entry === undefined || row === null || !this.#differs(entry, row)) return this.standing(option, false);
    return standing(this.#itemOf(option), this.#sharedFrame(entry, row));
  }

  leaves(tree: Tree): Uint8Array {
    return (this.#leaves[tree.number] ??= leavesOf(tree, this.#frame));
  }

  work({ key, procedure }: WorkAtom, defect: string | null, isShared: boolean): Code {
    const asked = `${key} ${isShared ? 'shared' : 'alone'} ${defect ?? ''}`;
    let code = this.#work.get(asked);
    if (code === undefined) {
      const [entry = '', row = ''] = key.split('/');
      const frame = isShared && this.#differs(entry, row) ? this.#sharedFrame(entry, row) : this.#frame;
      code = codeOf(workAnswer(frame, key, procedure, defect === null ? null : this.#defect(defect)));
      this.#work.set(asked, code);
    }
    return code;
  }

  /** The item as the defect stands in this situation. */
  #itemOf({ item, row }: Option): Item {
    if (item.defect === null) return item;
    const defect = underRow(this.#defect(item.defect.id), row);
    return { ...item, defect: this.#isSigned ? { ...defect, signed: true } : defect };
  }

  #defect(id: string): OpenDefect {
    return this.#defects.get(id)!;
  }

  #differs(entry: string, row: string): boolean {
    if (!this.#unnamed.has(`${entry}/${row}`)) return false;
    return this.#situation.defects.filter((defect) => defect.entry === entry).length > 1;
  }

  #sharedFrame(entry: string, row: string): Frame {
    const key = `${entry}/${row}`;
    let frame = this.#sharedFrames.get(key);
    if (frame === undefined)
      this.#sharedFrames.set(key, (frame = this.#framed((defect) => (defect.entry === entry ? row : null))));
    return frame;
  }

  #framed(rowOf: (defect: OpenDefect) => string | null): Frame {
    const defects = this.#situation.defects.map((defect) => ({ ...defect, row: rowOf(defect) }));
    return new Frame(this.#mel, { ...this.#situation, defects }, closureOf);
  }
}

/** Open leaves are false until the asker writes them. */
export function leavesOf({ leaves, open }: Tree, frame: Frame): Uint8Array {
  return Uint8Array.from(leaves, (leaf, at) =>
    open.some((one) => one.at === at) ? ALL_FALSE : fixedLeaf(leaf, frame),
  );
}

function fixedLeaf({ key, plan, holds }: ClosureLeaf, frame: Frame): Code {
  if (plan.fact !== 'judgement.accepted') return codeOfValue(frame.facts.view(key).value, holds);
  const { now, because } = personsAnswer(frame, readFactKey(key)?.subject ?? '', null);
  return codeOfValue(now === 'U' ? new Unknown(because) : now === 'T', holds);
}

export function standing(item: Item, frame: Frame): Standing {
  const judged = judgedOf(item, frame);
  if (judged === null) return { code: ALL_FALSE, acts: [], parts: [{ ...basisOf(item), code: ALL_FALSE }] };
  const code = judged.reduce((all, { answer }) => all & codeOf(answer), ALL_TRUE);
  const acts = judged.flatMap(({ work }): Act[] => (work === undefined ? [] : [actOf(work)]));
  const parts = judged.map(({ answer }) => ({ id: answer.id, text: answer.text, code: codeOf(answer) }));
  return { code, acts, parts: parts.filter((part) => part.code !== ALL_TRUE) };
}

function actOf({ work, defect, minutes }: WorkToDo): Act {
  return { key: `${work} ${defect ?? ''}`, work, minutes, ...(defect === undefined ? {} : { defect }) };
}

export function basisOf({ entry, unit, defect }: Pick<Item, 'entry' | 'unit' | 'defect'>): Named {
  const name = entry === null ? `defect ${defect?.id ?? ''}` : `${entry.title} ${unit}`;
  return {
    id: `${entry?.number ?? defect?.id ?? ''}/${unit}/basis`,
    text: `a row or another basis stands for ${name}`,
  };
}

/** Null when nothing stands for the item. */
function judgedOf(item: Item, frame: Frame): Judged[] | null {
  const { defect, entry, subEntry, row } = item;
  if (defect?.basis !== undefined) {
    const noTree = (): never => {
      throw new Error('No condition was left to judge.');
    };
    return otherBasis(defect, { ...defect.basis, conditions: [] }, frame, noTree);
  }
  if (entry === null || subEntry === null || row === null) return null;
  const onRow: RowItem = { ...item, entry, subEntry, row };
  return FIXED_RULES.flatMap((rule) => rule(onRow, frame));
}
