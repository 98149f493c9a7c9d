import { IntervalInputError } from './interval-input-error.js';
import { parseInterval, type Limit } from './interval-text.js';

/** Rectification interval letter. B, C and D are calendar days; A says its own interval in the row. */
export type Category = 'A' | 'B' | 'C' | 'D';

/** Consecutive calendar days, the day of discovery excluded. FAA MMEL Policy Letter 25, CS-MMEL, ORO.MLR.105; SEEN-Q. */
export const CATEGORY_DAYS: Readonly<Record<'B' | 'C' | 'D', number>> = { B: 3, C: 10, D: 120 };

/**
 * The limits that a row's category and interval text give.
 *
 * A: the text, which must be there. B, C, D: the letter's own days; a text may only be a shorter or equal number of
 * calendar days, because an operator's list may never be less restrictive than the master list.
 * Throws IntervalInputError.
 */
export function limitsOf(category: Category, interval: string | undefined): Limit[] {
  if (category === 'A') {
    if (interval === undefined) {
      throw new IntervalInputError('category', category, 'says its interval in the row, and none is given.');
    }
    return parseInterval(interval);
  }
  const letter = Object.hasOwn(CATEGORY_DAYS, category) ? CATEGORY_DAYS[category] : undefined;
  if (letter === undefined) throw new IntervalInputError('category', category, 'is none of A, B, C and D.');
  if (interval === undefined) return [{ amount: letter, unit: 'calendar-days' }];
  const limits = parseInterval(interval);
  const [limit] = limits;
  if (limits.length !== 1 || limit?.unit !== 'calendar-days') {
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
  return limits;
}
