/** The two values of a condition as formulas, each certain and possible: what the SAT oracle folds. */
import { and, or, type Formula } from 'logic-solver';

/** Certainly, and possibly. */
export interface Rail {
  sure: Formula;
  may: Formula;
}
export interface Rails {
  now: Rail;
  after: Rail;
}

export const YES = '$T';
export const NO = '$F';
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
