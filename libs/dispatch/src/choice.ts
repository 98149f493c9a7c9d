/** A choice of rows, the items that it puts down, and its value (rules 2, 5 and 6). */
import type { Row } from '#mel';
import type { Item } from './conditions/item.js';
import { judgeItems, type JudgedItem } from './conditions/judge-item.js';
import type { Frame } from './frame/frame.js';
import type { JudgedGate } from './gates.js';
import { agreed, allOfPairs, greater } from './kleene.js';
import type { OpenDefect } from './situation.js';
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

/**
 * Judges one choice of rows. Later searches over more choices come in by this door. A considered unit whose entry has one
 * row only takes that row, so nothing has to be chosen for it.
 */
export async function judgeChoice(
  frame: Frame,
  wholes: readonly (readonly DefectReading[])[],
  given: Choice,
  gates: readonly JudgedGate[],
): Promise<JudgedChoice> {
  const { choice, state } = withOnlyRows(frame, wholes, given);
  const considered = state.considered();
  const rowless = considered.filter(
    (unit) => !choice.considered.has(unitKey(unit)) && rowsFor(frame, unit).length > 0,
  );
  const decided = considered.filter((unit) => !rowless.includes(unit));
  const itemsOfGroups = [
    ...frame.defects.map((defect) => defectItems(frame, defect, choice)),
    ...decided.map((unit) => [consideredItem(frame, unit, choice)]),
  ];
  const judged = await judgeItems(itemsOfGroups.flat(), frame, state);
  let next = 0;
  const groups = itemsOfGroups.map((items) => groupOf(judged.slice(next, (next += items.length))));
  const value = allOfPairs([...groups.map(valueOf), ...gates.map(({ answer }) => answer)]);
  return { choice, groups: groups.sort(byPlace), rowless, now: value.now, after: value.after };
}

function withOnlyRows(
  frame: Frame,
  wholes: readonly (readonly DefectReading[])[],
  { recorded, considered }: Choice,
): { choice: Choice; state: DownState } {
  const rows = new Map(considered);
  for (;;) {
    const state = new DownState(frame.fitted, wholes, rows);
    const before = rows.size;
    for (const unit of state.considered()) {
      const [only, ...others] = rowsFor(frame, unit);
      if (only !== undefined && others.length === 0) rows.set(unitKey(unit), only);
    }
    if (rows.size === before) return { choice: { recorded, considered: rows }, state };
  }
}

function groupOf(items: JudgedItem[]): Group {
  const perhaps = items.some(({ item }) => item.perhaps);
  return { counts: !perhaps ? 'always' : items.length > 1 ? 'one-of' : 'perhaps', items };
}

/** The rows that may be chosen for a considered unit; none when its configuration is not known. */
export function rowsFor({ fitted }: Frame, { entry, unit }: ConsideredUnit): readonly Row[] {
  const match = fitted.match(entry);
  return match.kind === 'one' && match.subEntry.units.includes(unit) ? match.subEntry.rows : [];
}

function defectItems(frame: Frame, defect: OpenDefect, { recorded }: Choice): Item[] {
  const { id } = defect;
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
