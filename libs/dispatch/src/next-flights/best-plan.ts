/**
 * The best of all plans (rule 8): most leading flights known to be kept; of these most at may-fly; fewest rows changed
 * from the signed ones; least outstanding minutes, an act counted once; then the smallest list of entry, unit and row.
 */
import { minutesOf, workOf } from '../answer/work-list.js';
import type { Situation } from '../situation.js';
import { byCode } from '../units/unit.js';
import type { Leg } from './fly-plan.js';

export interface JudgedPlan {
  /** What was known before the first flight, with the rows of this choice. */
  start: Situation;
  legs: Leg[];
  /** Leading flights known to be kept. */
  p: number;
  /** Leading flights that may be kept if the unknown turns out well. */
  q: number;
}

export function judgedPlan(start: Situation, legs: Leg[]): JudgedPlan {
  return { start, legs, p: leading(legs, 'lo'), q: leading(legs, 'hi') };
}

function leading(legs: readonly Leg[], side: 'lo' | 'hi'): number {
  const first = legs.findIndex((leg) => leg[side] === 'may-not-fly');
  return first < 0 ? legs.length : first;
}

export function isBetterPlan(one: JudgedPlan, than: JudgedPlan): boolean {
  const [a, b] = [ordering(one), ordering(than)];
  const by = a.map((value, at) => value - (b[at] ?? 0)).find((difference) => difference !== 0);
  return by === undefined ? byCode(rowList(one), rowList(than)) < 0 : by < 0;
}

/** The smaller the better, the first that differs decides: flights kept, at may-fly, rows changed, acts untimed, minutes. */
export function ordering({ legs, p }: JudgedPlan): number[] {
  const kept = legs.slice(0, p);
  const work = kept.flatMap(({ judged }) => (judged === null ? [] : workOf(judged)));
  return [
    -p,
    -kept.filter(({ lo }) => lo === 'may-fly').length,
    legs[0]?.frame.defects.filter(({ signed, row }) => !signed && row !== null).length ?? 0,
    work.filter(({ minutes }) => minutes === null).length,
    minutesOf(work.filter(({ minutes }) => minutes !== null)) ?? 0,
  ];
}

function rowList({ legs: [first] }: JudgedPlan): string {
  const items = first?.judged?.groups.flatMap((group) => group.items) ?? [];
  return items
    .map(({ answer }) => `${answer.entry}\n${answer.unit}\n${answer.row ?? ''}`)
    .sort(byCode)
    .join('\n');
}
