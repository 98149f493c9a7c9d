/**
 * Why a row cannot be used: the smallest sets of conditions and other open items that refuse it, whatever rows everything
 * else takes. A set refuses a row when no choice of the other rows keeps all conditions of the set, with only the open
 * items of the set open. All sets of the smallest size are told.
 *
 * They are found the other way round: what any refusing set must hold at least one of. Each time a candidate does not
 * refuse, a choice shows it, and a refusing set must then hold a condition that this choice breaks, or another open item.
 */
import type { Mel } from '#mel';
import type { OpenDefect, Situation } from '../situation.js';
import { Fitted } from '../units/fitted.js';
import { byCode } from '../units/unit.js';
import { Budget } from './explore.js';
import { hittingSetsOf } from './hitting-sets.js';
import { isMonotone } from './monotone.js';
import type { Named } from './problem.js';
import { RowAlone, type Allowed, type ProblemsInParts } from './row-alone.js';
import { rowsOfDefect } from './rows-of-defect.js';

export interface RefusedBy {
  conditions: Named[];
  /** Ids of the other open defects that must be open for it. */
  openItems: string[];
}

export interface RefusedOption {
  defect: string;
  entry: string;
  row: string;
  /** All smallest ones; none when the search was given up before the first. */
  because: RefusedBy[];
  /** False when others, or smaller ones, may exist. */
  isWhole: boolean;
}

const MOST_SETS = 20;

/**
 * Every row that an entry offers to an open defect and that is shown to be usable under no choice of the other rows. The
 * budget is for each row.
 */
export function whyRefused(mel: Mel, situation: Situation, options: { budget?: number } = {}): RefusedOption[] {
  const nodes = options.budget ?? situation.settings.budget;
  const fitted = new Fitted(mel, situation.aircraft);
  const problems = new Map<string, ProblemsInParts>();
  return [...situation.defects]
    .sort((a, b) => byCode(a.id, b.id))
    .flatMap((defect) =>
      rowsOfDefect(defect, fitted).flatMap((row) => {
        if (row === null || defect.entry === null || defect.basis !== undefined) return [];
        const found = refusalsOf(
          new RowAlone(mel, situation, defect, row, new Budget(nodes), problems),
          othersOf(situation, defect),
        );
        return found === null ? [] : [{ defect: defect.id, entry: defect.entry, row, ...found }];
      }),
    );
}

function othersOf({ defects }: Situation, { id }: OpenDefect): string[] {
  return defects
    .map((one) => one.id)
    .filter((one) => one !== id)
    .sort(byCode);
}

/** Null when the row is not shown to be refused. */
function refusalsOf(row: RowAlone, others: readonly string[]): Pick<RefusedOption, 'because' | 'isWhole'> | null {
  const whole = row.allowed(null, others);
  if (whole !== null) return null;
  // Where closing an item can make something worse, fewer open items may refuse what more of them allow.
  const always = isMonotone(row.mel, row.situation) ? [] : others;
  const mustHold: string[][] = [];
  for (;;) {
    const candidates = hittingSetsOf(mustHold, MOST_SETS + 1, () => row.budget.take());
    if (candidates === null) return { because: [], isWhole: false };
    const refusing: RefusedBy[] = [];
    let fresh: string[] | null = null;
    for (const candidate of candidates.slice(0, MOST_SETS)) {
      const set = read(candidate, always);
      const allowed = row.allowed(set.conditions, set.openItems);
      if (allowed === 'unknown') return { because: refusing, isWhole: false };
      if (allowed === null) {
        refusing.push({ conditions: [...set.conditions].map((id) => row.named(id)), openItems: set.openItems });
        continue;
      }
      fresh = missing(grown(row, set, allowed, others), others);
      break;
    }
    if (fresh?.length === 0) throw new Error('A row is refused, and by nothing.');
    if (fresh === null) return { because: refusing, isWhole: candidates.length <= MOST_SETS };
    mustHold.push(fresh);
  }
}

interface Candidate {
  conditions: ReadonlySet<string>;
  openItems: string[];
}

function read(elements: readonly string[], always: readonly string[]): Candidate {
  const of = (kind: string): string[] => elements.flatMap((one) => (one.startsWith(kind) ? [one.slice(2)] : []));
  return { conditions: new Set(of('c ')), openItems: [...new Set([...always, ...of('d ')])].sort(byCode) };
}

interface NotRefusing {
  broken: ReadonlySet<string>;
  openItems: readonly string[];
}

/** As many open items as a choice bears that breaks no more conditions than the one found. */
function grown(row: RowAlone, set: Candidate, allowed: Allowed, others: readonly string[]): NotRefusing {
  let found: NotRefusing = { broken: allowed.broken, openItems: set.openItems };
  for (const other of others) {
    if (found.openItems.includes(other)) continue;
    const openItems = [...found.openItems, other];
    const more = row.allowed((id) => !found.broken.has(id), openItems);
    if (more !== null && more !== 'unknown') found = { broken: more.broken, openItems };
  }
  return found;
}

function missing({ broken, openItems }: NotRefusing, others: readonly string[]): string[] {
  const items = others.filter((one) => !openItems.includes(one));
  return [...[...broken].map((id) => `c ${id}`), ...items.map((id) => `d ${id}`)].sort(byCode);
}
