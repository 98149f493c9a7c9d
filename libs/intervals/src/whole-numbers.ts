import { IntervalInputError } from './interval-input-error.js';

/** Refuses a fraction, a negative or an endless number among the named ones; absent ones pass. */
export function checkWholeNumbers<T extends object>(place: string, holder: T, names: (keyof T & string)[]): void {
  for (const name of names) {
    const value = holder[name];
    if (value === undefined) continue;
    if (!Number.isSafeInteger(value) || Number(value) < 0) {
      throw new IntervalInputError(`${place}.${name}`, value, 'is not a whole number from 0 up.');
    }
  }
}
