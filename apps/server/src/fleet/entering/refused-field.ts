import { Problem } from '../../http/problem.js';

/** One field that cannot be, named. */
export function refusedField(pointer: string, reason: string): Problem {
  return new Problem('invalid-input', reason, { errors: [{ pointer, reason }] });
}
