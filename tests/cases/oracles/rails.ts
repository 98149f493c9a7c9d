/** The two values of a condition as formulas, each certain and possible: what the SAT oracle folds. */
import * as solver from 'logic-solver';
import type { Formula } from 'logic-solver';

export type { Formula };

export const YES = '$T';
export const NO = '$F';

/** Certainly, and possibly. */
export interface Rail {
  sure: Formula;
  may: Formula;
}
export interface Rails {
  now: Rail;
  after: Rail;
}

/** The solver's own connectives; a part that is true or false whatever is chosen never reaches it. */
export const and = (...parts: Formula[]): Formula => joined(parts, YES, NO, solver.and);
export const or = (...parts: Formula[]): Formula => joined(parts, NO, YES, solver.or);
export const not = (part: Formula): Formula => (part === YES ? NO : part === NO ? YES : solver.not(part));

function joined(parts: Formula[], none: string, all: string, join: (...parts: Formula[]) => Formula): Formula {
  const open = [...new Set(parts)].filter((part) => part !== none);
  if (open.includes(all)) return all;
  const [first, ...rest] = open;
  return first === undefined ? none : rest.length === 0 ? first : join(...open);
}

export const known = (value: Formula): Rail => ({ sure: value, may: value });
export const both = (rail: Rail): Rails => ({ now: rail, after: rail });
export const is = (value: boolean): Rails => both(known(value ? YES : NO));
export const UNKNOWN: Rails = both({ sure: NO, may: YES });

const fold = (join: (...parts: Formula[]) => Formula, all: readonly Rails[]): Rails => {
  const rail = (of: (one: Rails) => Rail): Rail => ({
    sure: join(...all.map((one) => of(one).sure)),
    may: join(...all.map((one) => of(one).may)),
  });
  return { now: rail((one) => one.now), after: rail((one) => one.after) };
};
export const every = (all: readonly Rails[]): Rails => (all.length === 0 ? is(true) : fold(and, all));
export const some = (all: readonly Rails[]): Rails => fold(or, all);
/** Sure where all are sure, possible where one is. */
export const agreed = (all: readonly Rails[]): Rails => {
  const [least, greatest] = [fold(and, all), fold(or, all)];
  return {
    now: { sure: least.now.sure, may: greatest.now.may },
    after: { sure: least.after.sure, may: greatest.after.may },
  };
};
export const when = (chosen: Formula, value: Rails): Rails => some([every([both(known(chosen)), value])]);
