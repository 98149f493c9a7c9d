import { askLimit } from './ask-limit.js';
import type { RectificationClock } from './clock.js';
import type { LimitAnswer, PlannedLeg } from './limit-answer.js';
import { countingSettings, type CountingSettings } from './settings.js';
import { checkUsed, type Used } from './used.js';
import { checkWholeNumbers } from './whole-numbers.js';

/** Whether the interval lets a flight depart, with the arithmetic, limit by limit. */
export interface DepartureAnswer {
  answer: 'holds' | 'fails' | 'unknown';
  /** The sentences that decide. */
  because: string;
  limits: LimitAnswer[];
}

/**
 * May this flight depart as far as the interval is concerned? Of several limits each must hold ("first of"), or one where
 * the row says that the later counts. Shorter limits inside the interval must hold too until what they wait for is done.
 *
 * `used` is what countUsed made of the legs flown before this flight; a missing counter that matters is `unknown`.
 * Throws IntervalInputError for times and numbers that cannot be.
 */
export function mayDepart(
  clock: RectificationClock,
  flight: PlannedLeg,
  used: Used = {},
  settings: Partial<CountingSettings> = {},
): DepartureAnswer {
  checkWholeNumbers('flight', flight, ['flightMinutes', 'blockMinutes', 'cycles', 'engineMinutes', 'engineCycles']);
  checkUsed(used);
  const settled = countingSettings(undefined, settings);
  const ask = (limits: RectificationClock['limits']): LimitAnswer[] =>
    limits.map((limit) => askLimit(limit, clock, flight, used, settled));
  const own = ask(clock.limits);
  const counted = clock.kind === 'counted' ? clock : null;
  const whole = counted?.joint === 'last-of' ? lastOf(own) : firstOf(own);
  const waiting = (counted?.within ?? []).filter(({ until }) => used.done?.includes(until) !== true);
  const inside = waiting.map(({ until, limits }) => {
    const { answer, because } = firstOf(ask(limits));
    return { answer, because: `${until} is not done: ${because}` };
  });
  return { ...firstOf([whole, ...inside]), limits: own };
}

type Said = Pick<LimitAnswer, 'answer' | 'because'>;

/** All must hold; the sentences that fail decide, else those not known, else all. */
function firstOf(limits: readonly Said[]): Said {
  return deciding(limits, ['fails', 'unknown', 'holds']);
}

/** One must hold; the sentences that hold decide, else those not known, else all. */
function lastOf(limits: readonly Said[]): Said {
  return deciding(limits, ['holds', 'unknown', 'fails']);
}

function deciding(limits: readonly Said[], order: readonly LimitAnswer['answer'][]): Said {
  const answer = order.find((one) => limits.some((limit) => limit.answer === one)) ?? 'holds';
  const those = limits.filter((limit) => limit.answer === answer);
  return { answer, because: those.map(({ because }) => because).join(' ') };
}
