/**
 * The best of all plans (rule 8): most leading flights known to be kept; of these most at may-fly; fewest rows changed
 * from the signed ones; least outstanding minutes, an act counted once; then the smallest list of entry, unit and row.
 */
import { workOf } from '../answer/work-list.js';
import type { Situation } from '../situation.js';
import { byCode } from '../units/unit.js';
import type { Leg } from './fly-plan.js';

/** What plans are compared by, however they were flown. */
export interface Ranked {
  /** Leading flights known to be kept. */
  p: number;
  /** The smaller the better, the first that differs decides: flights kept, at may-fly, rows changed, acts untimed, minutes. */
  order: readonly number[];
  /** Entry, unit and row of each item, by code units. */
  rows(): string;
}

export interface JudgedPlan extends Ranked {
  /** What was known before the first flight, with the rows of this choice. */
  start: Situation;
  legs: Leg[];
  /** Leading flights that may be kept if the unknown turns out well. */
  q: number;
}

export function judgedPlan(start: Situation, legs: Leg[]): JudgedPlan {
  const p = leading(legs, ({ lo }) => lo !== 'may-not-fly');
  const kept = legs.slice(0, p);
  return {
    start,
    legs,
    p,
    q: leading(legs, ({ hi }) => hi !== 'may-not-fly'),
    order: orderOf({
      p,
      atMayFly: kept.filter(({ lo }) => lo === 'may-fly').length,
      changes: legs[0]?.frame.defects.filter(({ signed, row }) => !signed && row !== null).length ?? 0,
      work: kept.flatMap(({ judged }) => (judged === null ? [] : workOf(judged))),
    }),
    rows: () => rowsOf(legs),
  };
}

/** How many flights are kept before the first that is not. */
export function leading<T>(legs: readonly T[], isKept: (leg: T) => boolean): number {
  const first = legs.findIndex((leg) => !isKept(leg));
  return first < 0 ? legs.length : first;
}

/** What decides between plans before the list of their rows does. */
interface Weighed {
  p: number;
  atMayFly: number;
  changes: number;
  /** Of the flights that are kept, an act once on each. */
  work: readonly { minutes: number | null }[];
}

export function orderOf({ p, atMayFly, changes, work }: Weighed): number[] {
  const timed = work.flatMap(({ minutes }) => minutes ?? []);
  return [-p, -atMayFly, changes, work.length - timed.length, timed.reduce((sum, minutes) => sum + minutes, 0)];
}

export function isBetterPlan(one: Ranked, than: Ranked): boolean {
  const by = one.order.map((value, at) => value - (than.order[at] ?? 0)).find((difference) => difference !== 0);
  return by === undefined ? byCode(one.rows(), than.rows()) < 0 : by < 0;
}

function rowsOf([first]: readonly Leg[]): string {
  const items = first?.judged?.groups.flatMap((group) => group.items) ?? [];
  return items
    .map(({ answer }) => `${answer.entry}\n${answer.unit}\n${answer.row ?? ''}`)
    .sort(byCode)
    .join('\n');
}
