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
