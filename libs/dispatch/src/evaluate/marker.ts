/**
 * What stands in the place of a fact's value when there is no single value to give.
 *
 * The rules engine is two-valued and says yes to `not` and `notEqual` about a fact it does not know. So it is given one
 * of these frozen objects instead, and the fold finds it again in the engine's own result tree and reads it there.
 */
export type Scalar = string | number | boolean;

/** Nobody has said. The reason goes into the explanation. */
export class Unknown {
  constructor(readonly reason: string) {
    Object.freeze(this);
  }
}

/**
 * Several values are possible, or work would change the value: every value it may have now, and every value it may have
 * after the work. One value in a list means that side is certain.
 */
export class Possible {
  constructor(
    readonly now: readonly Scalar[],
    readonly after: readonly Scalar[],
  ) {
    Object.freeze(this);
  }
}

/** The value of a fact as an evaluator is given it. */
export type FactValue = Scalar | Unknown | Possible;

/** A fact with where it came from, for the explanation. */
export interface FactView {
  value: FactValue;
  source?: string;
  by?: string;
  observedAt?: string;
  validUntil?: string;
}

/** Looks a fact up by its key. Never undefined: what is not recorded is an Unknown. */
export type FactLookup = (key: string) => FactView;
