/** How long a wait or a run lasts, from its recorded start. Nobody cuts it short. */
import { readInstant, writeInstant } from '#intervals';
import type { CardStep, StepOf } from '#mel';
import { before, millisecondsOf } from '../instant.js';
import { Refusal } from '../refusal.js';
import type { CardStepped, StepResult } from './card-acts.js';
import type { CardWork } from './card-life.js';
import { actsOn, stepInWords } from './card-work.js';

export interface Lasting {
  begunAt: string;
  minutes: number;
  /** Not before then, ISO 8601 UTC. */
  until: string;
}

/** From the last time it was begun; null while it was not. */
export function lastingOf(work: CardWork, step: CardStep): Lasting | null {
  const begun = actsOn(work, step.id).findLast((act) => act.kind === 'card-stepped' && act.result.kind === 'begun');
  if (begun?.kind !== 'card-stepped' || begun.result.kind !== 'begun') return null;
  const { minutes } = begun.result;
  const until = writeInstant(readInstant('start of the step', begun.enteredAt).add({ minutes }));
  return { begunAt: begun.enteredAt, minutes, until };
}

/** Throws Refusal `minutes-not-shown`: the value comes from the card, or from the aircraft by somebody's eyes. */
export function admitBegun(
  named: string,
  { lasts }: StepOf<'wait' | 'run'>,
  { minutes }: StepResult & { kind: 'begun' },
): void {
  const shownBy = 'shownBy' in lasts ? lasts.shownBy : 'the card';
  const least = 'shownBy' in lasts ? (lasts.atLeast ?? 0) : lasts.minutes;
  const most = 'shownBy' in lasts ? MOST_MINUTES : lasts.minutes;
  if (Number.isInteger(minutes) && minutes >= least && minutes <= most) return;
  throw new Refusal('minutes-not-shown', { step: named, shownBy, minutes });
}

const MOST_MINUTES = 1440;

/** Throws Refusal `wait-not-begun` or `wait-cut-short`. The end counts when it is entered, not when it is said to be. */
export function admitLasted(work: CardWork, step: CardStep, { enteredAt }: CardStepped): void {
  const named = stepInWords(work.started.card, step);
  const lasting = lastingOf(work, step);
  if (lasting === null) throw new Refusal('wait-not-begun', { step: named });
  const { begunAt, minutes, until } = lasting;
  if (!before(enteredAt, until)) return;
  const seconds = Math.ceil((millisecondsOf(until, 'end') - millisecondsOf(enteredAt, 'time of entry')) / 1000);
  throw new Refusal('wait-cut-short', { step: named, begunAt, minutes, until, short: inWords(seconds) });
}

function inWords(seconds: number): string {
  const minutes = Math.floor(seconds / 60);
  const rest = seconds % 60;
  return [...(minutes > 0 ? [`${minutes} min`] : []), ...(rest > 0 ? [`${rest} s`] : [])].join(' ');
}
