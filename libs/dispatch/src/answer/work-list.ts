/** What is still to be done before the flight, and by whom. */
import type { JudgedChoice } from '../choice.js';
import type { WorkToDo } from '../verdict.js';

/** Outstanding work in the order of the items; the same act for the same defect once. */
export function workOf(choice: JudgedChoice): WorkToDo[] {
  const all = choice.groups.flatMap(({ items }) =>
    items.flatMap((one) => one.judged.flatMap(({ work }) => (work === undefined ? [] : [work]))),
  );
  const seen = new Map(all.map((work) => [`${work.work} ${work.defect ?? ''}`, work]));
  return [...seen.values()];
}

/** Minutes of all of it, one after another; null when the MEL gives no figure for some of it. */
export function minutesOf(work: readonly WorkToDo[]): number | null {
  return work.reduce<number | null>(
    (sum, { minutes }) => (sum === null || minutes === null ? null : sum + minutes),
    0,
  );
}
