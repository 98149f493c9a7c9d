/** What the fixed conditions of each row say, alone and when another defect of the entry takes the same row. */
import type { Mel, Procedure } from '#mel';
import { ALL_FALSE, ALL_TRUE, codeOf, type Code } from '../compiled/code.js';
import { closureOf } from '../compiled/closures-of-mel.js';
import type { Item, Judged, RowItem } from '../conditions/item.js';
import { FIXED_RULES } from '../conditions/judge-item.js';
import { otherBasis } from '../conditions/recorded-basis.js';
import { Frame } from '../frame/frame.js';
import { workAnswer } from '../frame/work-state.js';
import type { OpenDefect, Situation } from '../situation.js';
import type { Act, Named, Standing } from './problem.js';

export interface TwoStandings {
  alone: Standing;
  shared: Standing;
}

/** A record of work that names no defect counts only while one defect alone is under the row. */
export class Standings {
  /** No defect under any row. */
  readonly frame: Frame;
  readonly #mel: Mel;
  readonly #situation: Situation;
  readonly #shared = new Map<string, Frame>();
  /** Rows with a record of work that names no defect, as `<entry>/<row>`. */
  readonly #unnamed: ReadonlySet<string>;

  constructor(mel: Mel, situation: Situation) {
    this.#mel = mel;
    this.#situation = situation;
    this.frame = this.#framed(() => null);
    const unnamed = situation.work.filter(({ defect }) => defect === undefined);
    this.#unnamed = new Set(unnamed.map(({ work }) => work.slice(0, work.lastIndexOf('/'))));
  }

  of(item: Item, row: string | null): TwoStandings {
    const alone = standing(item, this.frame);
    const entry = item.entry?.number;
    if (entry === undefined || row === null || !this.#differs(entry, row)) return { alone, shared: alone };
    return { alone, shared: standing(item, this.#sharedFrame(entry, row)) };
  }

  /** A piece of work as the condition of another row asks for it. */
  work(key: string, procedure: Procedure | null, defect: OpenDefect | null): { alone: Code; shared: Code } {
    const [entry = '', row = ''] = key.split('/');
    const alone = codeOf(workAnswer(this.frame, key, procedure, defect));
    if (!this.#differs(entry, row)) return { alone, shared: alone };
    return { alone, shared: codeOf(workAnswer(this.#sharedFrame(entry, row), key, procedure, defect)) };
  }

  #differs(entry: string, row: string): boolean {
    if (!this.#unnamed.has(`${entry}/${row}`)) return false;
    return this.#situation.defects.filter((defect) => defect.entry === entry).length > 1;
  }

  #sharedFrame(entry: string, row: string): Frame {
    const key = `${entry}/${row}`;
    let frame = this.#shared.get(key);
    if (frame === undefined)
      this.#shared.set(key, (frame = this.#framed((defect) => (defect.entry === entry ? row : null))));
    return frame;
  }

  #framed(rowOf: (defect: OpenDefect) => string | null): Frame {
    const defects = this.#situation.defects.map((defect) => ({ ...defect, row: rowOf(defect) }));
    return new Frame(this.#mel, { ...this.#situation, defects }, closureOf);
  }
}

function standing(item: Item, frame: Frame): Standing {
  const judged = judgedOf(item, frame);
  if (judged === null) return { code: ALL_FALSE, acts: [], parts: [{ ...basisOf(item), code: ALL_FALSE }] };
  const code = judged.reduce((all, { answer }) => all & codeOf(answer), ALL_TRUE);
  const acts = judged.flatMap(({ work }): Act[] =>
    work === undefined ? [] : [{ key: `${work.work} ${work.defect ?? ''}`, minutes: work.minutes }],
  );
  const parts = judged.map(({ answer }) => ({ id: answer.id, text: answer.text, code: codeOf(answer) }));
  return { code, acts, parts: parts.filter((part) => part.code !== ALL_TRUE) };
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
