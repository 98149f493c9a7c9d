/** What is wrong with a file that was to be loaded, for the one who sent it: file, entry or card, place and reason of each. */
import type { MelError } from '#mel';
import { Problem } from '../http/problem.js';

export function notLoaded(file: string, found: readonly MelError[]): Problem {
  const errors = found.map((error) => ({ pointer: error.field, reason: error.reason, ...placeOf(error) }));
  const [first] = found;
  const where = first ? placeInWords(first) : '';
  return new Problem('invalid-input', `${file}: ${errors.length} error(s); the first: ${where} ${first?.reason}`, {
    errors,
  });
}

const placeOf = ({ entry, card, step }: MelError) => ({
  ...(entry === null ? {} : { entry }),
  ...(card === undefined ? {} : { card }),
  ...(step === undefined ? {} : { step }),
});

function placeInWords({ entry, card, step, field }: MelError): string {
  if (card === undefined) return entry ?? 'file';
  return `card ${card}, ${step === undefined ? field : `step ${step}`}:`;
}
