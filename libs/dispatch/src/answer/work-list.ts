/** What is still to be done before the flight, by whom, and when it could then leave. */
import type { JudgedChoice } from '../choice.js';
import { inUtc, millisOf, plusMinutes } from '../frame/moment.js';
import type { Situation } from '../situation.js';
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

/** The later of the work's end and the planned off-block, ISO 8601 UTC; null when it cannot be computed. */
export function earliestOffBlock({ at, flight }: Situation, minutes: number | null): string | null {
  if (minutes === null || flight === null) return null;
  const ready = plusMinutes('at', at, minutes);
  const planned = inUtc('flight.offBlockAt', flight.offBlockAt);
  return millisOf('at', ready) > millisOf('flight.offBlockAt', planned) ? ready : planned;
}
