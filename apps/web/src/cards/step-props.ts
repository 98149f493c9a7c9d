import type { Schemas } from '../api/client.js';
import type { Reading } from '../api/use-read.js';

export type CardView = Schemas['CardWorkView'];
export type Step = Schemas['CardStep'];

/** What the forms of a step are given. */
export interface StepProps {
  reading: Reading<CardView>;
  view: CardView;
  step: Step;
  done(): void;
}

/** Steps as the card numbers them: `step 9 "Renew both bowl seals."` */
export const stepsInWords = (steps: readonly Step[], ids: readonly string[]): string =>
  steps.flatMap(({ id, text }, at) => (ids.includes(id) ? [`step ${at + 1} "${text}"`] : [])).join('; ');
