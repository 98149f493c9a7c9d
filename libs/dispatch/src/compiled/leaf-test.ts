/** One comparison of one leaf as a closure, and its two values whatever stands in the place of the fact. */
import type { ConditionLeaf, Operator } from '#mel';
import { Possible, Unknown, type FactValue } from '../evaluate/marker.js';
import { ALL_FALSE, ALL_TRUE, ALL_UNKNOWN, type Code } from './code.js';

type Scalar = string | number | boolean;
type Expected = ConditionLeaf['value'];
export type Holds = (value: Scalar) => boolean;

/** A text counts as a number where it begins like one; anything else has no place in an order. */
const ordered = (holds: Holds): Holds => {
  return (value) =>
    !Number.isNaN(typeof value === 'number' ? value : Number.parseFloat(String(value))) && holds(value);
};

const member = (expected: Expected): Holds => {
  const set = new Set<Scalar>(Array.isArray(expected) ? expected : []);
  return (value) => set.has(value);
};

const TESTS: Record<Operator, (expected: Expected) => Holds> = {
  equal: (expected) => (value) => value === expected,
  notEqual: (expected) => (value) => value !== expected,
  lessThan: (expected) => ordered((value) => value < expected),
  lessThanInclusive: (expected) => ordered((value) => value <= expected),
  greaterThan: (expected) => ordered((value) => value > expected),
  greaterThanInclusive: (expected) => ordered((value) => value >= expected),
  in: member,
  notIn: (expected) => {
    const isMember = member(expected);
    return (value) => !isMember(value);
  },
};

export const holdsOf = (operator: Operator, expected: Expected): Holds => TESTS[operator](expected);

export function codeOfValue(value: FactValue, holds: Holds): Code {
  if (value instanceof Unknown) return ALL_UNKNOWN;
  if (value instanceof Possible) return side(value.now, holds) | (side(value.after, holds) << 2);
  return holds(value) ? ALL_TRUE : ALL_FALSE;
}

/** F 00, U 01, T 11: what all possible values say, or unknown where they differ or there are none. */
function side(values: readonly Scalar[], holds: Holds): number {
  let [yes, no] = [false, false];
  for (const value of values) {
    if (holds(value)) yes = true;
    else no = true;
  }
  return yes === no ? 0b01 : yes ? 0b11 : 0b00;
}
