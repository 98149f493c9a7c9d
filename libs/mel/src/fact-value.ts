/** Whether a value may be the answer to a fact. One rule for the loader, the server and the case files. */
import type { FactDefinition } from './facts.js';

const LONGEST_TEXT = 200;

/** Null when `value` fits the fact's type and choices; otherwise the reason, as a sentence part naming the value. */
export const misfitOf = (fact: FactDefinition, value: unknown): string | null => {
  const shown = shownValue(value);
  if (fact.type === 'boolean') return typeof value === 'boolean' ? null : `${shown} is not true or false`;
  if (fact.type === 'number') {
    return typeof value === 'number' && Number.isFinite(value) ? null : `${shown} is not a number`;
  }
  if (typeof value !== 'string') return `${shown} is not a text`;
  if (value === '' || value.length > LONGEST_TEXT) return `${shown} is empty or too long`;
  if (fact.choices === undefined || fact.choices.includes(value)) return null;
  return `${shown} is none of ${fact.choices.join(', ')}`;
};

/**
 * Null when somebody may answer so; otherwise the reason. A flight level of 31000 or of -1 is a slip, and a condition of a
 * row would be held against it all the same.
 */
export const slipOf = (fact: FactDefinition, value: unknown): string | null => {
  const misfit = misfitOf(fact, value);
  if (misfit !== null || fact.between === undefined || typeof value !== 'number') return misfit;
  const [least, greatest] = fact.between;
  if (value >= least && value <= greatest) return null;
  return `${value} is not from ${least} to ${greatest} ${fact.unit ?? ''}`.trim();
};

/** A value as an error message shows it: short, whatever it was. */
export const shownValue = (value: unknown): string => {
  if (typeof value === 'string') return `"${value.length > 40 ? `${value.slice(0, 40)}...` : value}"`;
  if (value === null || typeof value === 'number' || typeof value === 'boolean') return String(value);
  return Array.isArray(value) ? 'a list' : `a value of type ${typeof value}`;
};
