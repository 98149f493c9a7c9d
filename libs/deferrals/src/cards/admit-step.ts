/** What every step of a card must be, whatever its kind: not done yet, in its turn, and by somebody who may. */
import type { CardStep } from '#mel';
import type { Actor, Authorisation } from '../people.js';
import { Refusal } from '../refusal.js';
import type { CardWork } from './card-life.js';
import { doneBy, stepInWords, stepsMissingBefore } from './card-work.js';

/** Throws Refusal. */
export function admitStep(work: CardWork, step: CardStep, by: Actor, on: Authorisation): void {
  const { card } = work.started;
  const named = stepInWords(card, step);
  const done = doneBy(work, step);
  if (done) throw new Refusal('step-done-already', { step: named, doneAt: done.enteredAt, name: done.by.name });
  const missing = stepsMissingBefore(work, step);
  if (missing.length > 0) {
    const others = missing.map((one) => `step ${stepInWords(card, one)}`);
    throw new Refusal('step-before-others', { step: named, missing: others });
  }
  const { licence } = step;
  if (licence === undefined || licence.some((one) => on.licenceCategories.includes(one))) return;
  const held = on.licenceCategories.length > 0 ? on.licenceCategories : 'none';
  throw new Refusal('step-needs-licence', { step: named, asked: licence.join(' or '), name: by.name, held });
}
