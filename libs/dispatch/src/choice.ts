/** A choice of rows, the items that it puts down, and its value (rules 2, 5 and 6). */
import type { Row } from '#mel';
import type { Item } from './conditions/item.js';
import { judgeItem, type JudgedItem } from './conditions/judge-item.js';
import type { Frame } from './frame/frame.js';
import type { JudgedGate } from './gates.js';
import { agreed, allOfPairs, greater } from './kleene.js';
import { DownState, type ConsideredUnit } from './units/down-state.js';
import { readingsOf, type DefectReading } from './units/readings.js';
import { unitKey } from './units/unit.js';
import type { NowAfter, Truth } from './verdict.js';
import { byCode } from './units/unit.js';

/** One row for every open defect, and one for every unit that is only considered inoperative. */
export interface Choice {
  /** By defect id. */
  recorded: ReadonlyMap<string, string | null>;
  /** By unit key. */
  considered: ReadonlyMap<string, Row>;
}

/** Items that stand for one defect, or one considered unit, and how they count in the whole. */
export interface Group {
  counts: 'always' | 'one-of' | 'perhaps';
  items: JudgedItem[];
}

export interface JudgedChoice extends NowAfter {
  choice: Choice;
  groups: Group[];
  /** Considered units that still lack a row; the value is then only an upper bound. */
  rowless: ConsideredUnit[];
}

/** Judges one choice of rows. Later searches over more choices come in by this door. */
export async function judgeChoice(
  frame: Frame,
  wholes: readonly (readonly DefectReading[])[],
  choice: Choice,
  gates: readonly JudgedGate[],
): Promise<JudgedChoice> {
  const state = new DownState(frame.fitted, wholes, choice.considered);
  const considered = state.considered();
  const rowless = considered.filter((unit) => !choice.considered.has(unitKey(unit)) && hasRows(frame, unit));
  const decided = considered.filter((unit) => !rowless.includes(unit));
  const groups = await Promise.all([
    ...frame.defects.map((defect) => groupOf(defectItems(frame, defect.id, choice), frame, state)),
    ...decided.map((unit) => groupOf([consideredItem(frame, unit, choice)], frame, state)),
  ]);
  const value = allOfPairs([...groups.map(valueOf), ...gates.map(({ answer }) => answer)]);
  return { choice, groups: groups.sort(byPlace), rowless, now: value.now, after: value.after };
}

async function groupOf(items: Item[], frame: Frame, state: DownState): Promise<Group> {
  const judged = await Promise.all(items.map((item) => judgeItem(item, frame, state)));
  const perhaps = items.some((item) => item.perhaps);
  return { counts: !perhaps ? 'always' : items.length > 1 ? 'one-of' : 'perhaps', items: judged };
}

/** The rows that may be chosen for a considered unit; none when its configuration is not known. */
export function rowsFor({ fitted }: Frame, { entry, unit }: ConsideredUnit): readonly Row[] {
  const match = fitted.match(entry);
  return match.kind === 'one' && match.subEntry.units.includes(unit) ? match.subEntry.rows : [];
}

function hasRows(frame: Frame, unit: ConsideredUnit): boolean {
  return rowsFor(frame, unit).length > 0;
}

function defectItems(frame: Frame, id: string, { recorded }: Choice): Item[] {
  const defect = frame.defects.find((one) => one.id === id);
  if (defect === undefined) return [];
  const cause = { kind: 'failed', defect: id } as const;
  const readings = readingsOf(defect, recorded.get(id) ?? null, frame.fitted);
  const known = defect.entry === null || frame.fitted.match(defect.entry).kind !== 'unknown';
  if (readings.length === 0) {
    const entry = (defect.entry === null ? undefined : frame.mel.entry(defect.entry)) ?? null;
    return [
      {
        entry,
        unit: defect.units.join(' or '),
        subEntry: null,
        row: null,
        configurationKnown: known,
        defect,
        cause,
        perhaps: false,
      },
    ];
  }
  return readings.map(({ entry, unit, subEntry, row }) => ({
    entry,
    unit,
    subEntry,
    row,
    configurationKnown: known,
    defect,
    cause,
    perhaps: readings.length > 1,
  }));
}

function consideredItem(frame: Frame, considered: ConsideredUnit, choice: Choice): Item {
  const match = frame.fitted.match(considered.entry);
  return {
    entry: frame.mel.entry(considered.entry) ?? null,
    unit: considered.unit,
    subEntry: match.kind === 'one' ? match.subEntry : null,
    row: choice.considered.get(unitKey(considered)) ?? null,
    configurationKnown: match.kind !== 'unknown',
    defect: null,
    cause: { kind: 'considered-inoperative', by: { ...considered.by, row: considered.row } },
    perhaps: !considered.inAll,
  };
}

/**
 * A defect that may be of several units counts as exactly one of them: it holds when all agree. A unit that is down only
 * in some readings takes nothing away when its row holds.
 */
export function valueOf({ counts, items }: Group): NowAfter {
  const side = (name: keyof NowAfter): Truth => {
    const values = items.map(({ answer }) => answer[name]);
    if (counts === 'one-of') return agreed(values);
    const [value = 'F'] = values;
    return counts === 'perhaps' ? greater(value, 'U') : value;
  };
  return { now: side('now'), after: side('after') };
}

function byPlace(a: Group, b: Group): number {
  const [x, y] = [a.items[0], b.items[0]];
  if (x === undefined || y === undefined) return 0;
  return (
    byCode(x.answer.entry, y.answer.entry) ||
    byCode(x.answer.unit, y.answer.unit) ||
    byCode(x.item.defect?.id ?? '', y.item.defect?.id ?? '')
  );
}
