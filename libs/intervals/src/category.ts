import { IntervalInputError } from './interval-input-error.js';
import type { Limit } from './interval-text.js';
import { readInterval, writeWholeInterval, type Interval } from './whole-interval.js';

/** Rectification interval letter. B, C and D are calendar days; A says its own interval in the row. */
export type Category = 'A' | 'B' | 'C' | 'D';

/** Consecutive calendar days, the day of discovery excluded. FAA MMEL Policy Letter 25, CS-MMEL, ORO.MLR.105; SEEN-Q. */
export const CATEGORY_DAYS: Readonly<Record<'B' | 'C' | 'D', number>> = { B: 3, C: 10, D: 120 };

/**
 * The interval that a row's category and interval text give.
 *
 * A: the text, which must be there. B, C, D: the letter's own days; a text may only be a shorter or equal number of
 * calendar days, because an operator's list may never be less restrictive than the master list.
 * Throws IntervalInputError.
 */
export function intervalOf(category: Category, interval: string | undefined): Interval {
  if (category === 'A') {
    if (interval === undefined) {
      throw new IntervalInputError('category', category, 'says its interval in the row, and none is given.');
    }
    return readInterval(interval);
  }
  const letter = Object.hasOwn(CATEGORY_DAYS, category) ? CATEGORY_DAYS[category] : undefined;
  if (letter === undefined) throw new IntervalInputError('category', category, 'is none of A, B, C and D.');
  const read = readInterval(interval ?? `${letter} calendar-days`);
  const [limit] = read.limits;
  if (limit?.unit !== 'calendar-days' || writeWholeInterval(read) !== writeDays(limit.amount)) {
    throw new IntervalInputError(
      'interval',
      interval,
      `does not fit category ${category}, which counts calendar days only.`,
    );
  }
  if (limit.amount > letter) {
    throw new IntervalInputError(
      'interval',
      interval,
      `is longer than the ${letter} calendar days of category ${category}.`,
    );
  }
  return read;
}

/** The limits of that interval, without what else its text says. Throws IntervalInputError. */
export function limitsOf(category: Category, interval: string | undefined): Limit[] {
  return intervalOf(category, interval).limits;
}

function writeDays(count: number): string {
  return `${count} ${count === 1 ? 'calendar-day' : 'calendar-days'}`;
}
