/** Two ways of computing one answer came to two ends. One of them is wrong, so neither is shown, recorded or signed. */
import type { Bound } from './bounds.js';
import type { JudgedChoice } from './choice.js';
import type { Situation } from './situation.js';
import type { ConditionAnswer } from './verdict.js';

export interface OneWay {
  way: string;
  lo: Bound;
  hi: Bound;
  /** With their trees; null where this way knows values alone. */
  conditions: ConditionAnswer[] | null;
}

export class EvaluatorsDisagree extends Error {
  readonly aircraft: string;
  readonly flight: string | null;

  constructor(
    { aircraft, flight }: Pick<Situation, 'aircraft' | 'flight'>,
    readonly ways: readonly [OneWay, OneWay],
  ) {
    const { registration } = aircraft;
    const name = flight?.number ?? flight?.id ?? null;
    const [one, other] = ways.map(({ way, lo, hi }) => `${way} says "${lo === hi ? lo : `${lo} to ${hi}`}"`);
    super(`For ${registration}${name === null ? '' : ` on ${name}`} ${one}, ${other}. Neither is taken.`);
    this.aircraft = registration;
    this.flight = name;
  }
}

export function conditionsOf({ groups }: Pick<JudgedChoice, 'groups'>): ConditionAnswer[] {
  return groups.flatMap(({ items }) => items.flatMap(({ answer }) => answer.conditions));
}
