/**
 * Least to fix (rule 10): the sets of defects without which the aircraft may fly, at least after work, and that contain no
 * smaller such set.
 *
 * Where closing a defect can never make anything worse, they are found by duality: a repair must hit every set of defects
 * that by itself keeps the aircraft on the ground. Where it can (a row needs its partner down, a permit ends with its
 * item), all sets are gone through by size.
 */
import type { Mel } from '#mel';
import type { OpenDefect, Situation } from '../situation.js';
import { byCode } from '../units/unit.js';
import { Budget } from './explore.js';
import { boundsUnder } from './find-choice.js';
import { smallestFirst } from './hitting-sets.js';
import { isMonotone } from './monotone.js';

export interface Repair {
  /** Ids, by code units. */
  defects: string[];
  /** Estimated minutes of all of them; null when somebody's estimate is missing. */
  minutes: number | null;
}

export interface LeastToFix {
  /** By how many, by minutes (unknown last), by entry and id. Empty when nothing needs fixing, or fixing does not help. */
  repairs: Repair[];
  /** False when the search was given up: these, perhaps others. */
  isWhole: boolean;
  reason: 'budget' | null;
}

export function leastToFix(mel: Mel, situation: Situation, options: { budget?: number } = {}): LeastToFix {
  const budget = new Budget(options.budget ?? situation.settings.budget);
  const mayFly = new MayFlyWithout(mel, situation, budget);
  if (mayFly.without([])) return { repairs: [], isWhole: mayFly.isWhole, reason: mayFly.isWhole ? null : 'budget' };
  const ids = situation.defects.map(({ id }) => id).sort(byCode);
  const found = isMonotone(mel, situation) ? byDuality(ids, mayFly) : bySize(ids, mayFly);
  const byId = new Map(situation.defects.map((defect) => [defect.id, defect]));
  const repairs = found.map((defects) => ({ defects, minutes: minutesOf(defects, byId) }));
  return {
    repairs: repairs.sort((a, b) => compareRepairs(a, b, byId)),
    isWhole: mayFly.isWhole,
    reason: mayFly.isWhole ? null : 'budget',
  };
}

/** The same situation once these defects are rectified. */
export function withoutDefects(situation: Situation, closed: ReadonlySet<string>): Situation {
  const { gates, defects } = situation;
  return {
    ...situation,
    defects: defects.filter(({ id }) => !closed.has(id)),
    gates: { ...gates, unanswered: gates.unanswered.filter((id) => !closed.has(id)) },
  };
}

class MayFlyWithout {
  isWhole = true;
  readonly #known = new Map<string, boolean>();

  constructor(
    readonly mel: Mel,
    readonly situation: Situation,
    readonly budget: Budget,
  ) {}

  /** False also when the budget ended before it was shown; `isWhole` then says so. */
  without(defects: readonly string[]): boolean {
    const key = defects.join('\n');
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    if (!this.budget.take()) {
      this.isWhole = false;
      return false;
    }
    const bounds = boundsUnder(this.mel, withoutDefects(this.situation, new Set(defects)), this.budget);
    if (bounds.lo === 0 && !bounds.isWhole) this.isWhole = false;
    this.#known.set(key, bounds.lo > 0);
    return bounds.lo > 0;
  }
}

function bySize(ids: readonly string[], mayFly: MayFlyWithout): string[][] {
  const found: string[][] = [];
  for (let size = 1; size <= ids.length; size++) {
    for (const some of subsets(ids, size)) {
      if (found.some((smaller) => smaller.every((id) => some.includes(id)))) continue;
      if (mayFly.without(some)) found.push(some);
      if (!mayFly.isWhole) return found;
    }
  }
  return found;
}

function* subsets(ids: readonly string[], size: number): Generator<string[]> {
  if (size === 0) return yield [];
  for (const [at, first] of ids.entries())
    for (const rest of subsets(ids.slice(at + 1), size - 1)) yield [first, ...rest];
}

function byDuality(ids: readonly string[], mayFly: MayFlyWithout): string[][] {
  if (!mayFly.without(ids)) return [];
  const conflicts: string[][] = [];
  const repairs = new Set<string>();
  for (;;) {
    const fresh = smallestFirst(conflicts).find((hit) => !repairs.has(hit.join('\n')));
    if (fresh === undefined || !mayFly.isWhole) return [...repairs].map((key) => key.split('\n'));
    if (mayFly.without(fresh)) repairs.add(fresh.join('\n'));
    else if (mayFly.isWhole) conflicts.push(conflictIn(ids, fresh, mayFly));
  }
}

/** A smallest-by-inclusion set of defects that keeps the aircraft on the ground, none of them in `closed`. */
function conflictIn(ids: readonly string[], closed: readonly string[], mayFly: MayFlyWithout): string[] {
  let open = ids.filter((id) => !closed.includes(id));
  for (const id of open) {
    const fewer = open.filter((one) => one !== id);
    if (!mayFly.without(ids.filter((one) => !fewer.includes(one))) && mayFly.isWhole) open = fewer;
  }
  return open;
}

function minutesOf(ids: readonly string[], defects: ReadonlyMap<string, OpenDefect>): number | null {
  return ids.reduce<number | null>((sum, id) => {
    const minutes = defects.get(id)?.rectifyMinutes;
    return sum === null || minutes === undefined ? null : sum + minutes;
  }, 0);
}

function compareRepairs(a: Repair, b: Repair, defects: ReadonlyMap<string, OpenDefect>): number {
  const name = ({ defects: ids }: Repair): string =>
    ids
      .map((id) => `${defects.get(id)?.entry ?? ''}\n${id}`)
      .sort(byCode)
      .join('\n');
  const minutes = (a.minutes ?? Infinity) - (b.minutes ?? Infinity);
  return a.defects.length - b.defects.length || (Number.isNaN(minutes) ? 0 : minutes) || byCode(name(a), name(b));
}
