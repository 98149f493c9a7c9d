import { UsageError } from '../usage-error.js';

/**
 * Reads `name=value; name=value` of one option. Refuses a name that is not known, one without its value, and one given
 * twice.
 */
export function pairsOf(option: string, text: string, names: readonly string[]): Map<string, string> {
  const pairs = new Map<string, string>();
  for (const part of text.split(';').map((one) => one.trim())) {
    const [name = '', value] = part.split(/=(.*)/s).map((one) => one.trim());
    if (!names.includes(name)) throw new UsageError(`${option} "${part}": there are ${names.join(', ')}`);
    if (value === undefined || value === '') throw new UsageError(`${option} "${part}" has no value after =`);
    if (pairs.has(name)) throw new UsageError(`${option} names ${name} twice`);
    pairs.set(name, value);
  }
  return pairs;
}

/** A whole number from 0 up, or a refusal that names where it stood. */
export function wholeOf(place: string, text: string): number {
  if (!/^\d{1,9}$/.test(text)) throw new UsageError(`${place} "${text}" is not a whole number from 0 up`);
  return Number(text);
}

/** `QVR, QHT` or `QVR QHT`. */
export function listOf(text: string): string[] {
  return text.split(/[\s,]+/).filter((one) => one !== '');
}
