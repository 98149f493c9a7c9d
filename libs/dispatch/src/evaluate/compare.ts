/**
 * The eight comparisons a MEL may use, for values that the engine itself is never shown: one of several possible values
 * of a fact. Same answers as the engine's own operators (a test compares them).
 */
import type { ConditionLeaf, Operator } from '#mel';
import type { Truth } from '../verdict.js';
import { agreed } from '../kleene.js';
import type { Scalar } from './marker.js';

type Expected = ConditionLeaf['value'];

const isNumeric = (value: Scalar): boolean => !Number.isNaN(Number.parseFloat(String(value)));

const ordered =
  (holds: (value: Scalar, expected: Expected) => boolean) =>
  (value: Scalar, expected: Expected): boolean =>
    isNumeric(value) && holds(value, expected);

const among = (value: Scalar, expected: Expected): boolean =>
  Array.isArray(expected) && typeof value !== 'boolean' && expected.includes(value);

const OPERATORS: Record<Operator, (value: Scalar, expected: Expected) => boolean> = {
  equal: (value, expected) => value === expected,
  notEqual: (value, expected) => value !== expected,
  lessThan: ordered((value, expected) => value < expected),
  lessThanInclusive: ordered((value, expected) => value <= expected),
  greaterThan: ordered((value, expected) => value > expected),
  greaterThanInclusive: ordered((value, expected) => value >= expected),
  in: among,
  notIn: (value, expected) => !among(value, expected),
};

/** Does one value satisfy the comparison? */
export function compares(value: Scalar, operator: Operator, expected: Expected): boolean {
  return OPERATORS[operator](value, expected);
}

/** T or F when every possible value says so, U when they differ or when nothing is known about the value. */
export function comparesAll(possible: readonly Scalar[], operator: Operator, expected: Expected): Truth {
  return agreed(possible.map((value) => (compares(value, operator, expected) ? 'T' : 'F')));
}
