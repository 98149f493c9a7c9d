import { IntervalInputError } from '#intervals';
import { Refusal } from '../refusal.js';

/** Runs a calculation of time; bad input to it becomes a refusal that names the value. */
export function readingIntervals<T>(calculate: () => T): T {
  try {
    return calculate();
  } catch (error) {
    if (!(error instanceof IntervalInputError)) throw error;
    throw new Refusal('interval-cannot-be-computed', { because: error.message });
  }
}
