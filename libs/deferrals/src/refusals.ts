/**
 * The catalogue of refusals: one code per refusal, the sentence with holes for its facts, what to do next, and where the
 * rule stands. Each code becomes one documented problem type of the API.
 */
import { DEFERRING_REFUSALS } from './refusals/deferring.js';
import type { RefusalEntry } from './refusals/entry.js';
import { EXTENDING_REFUSALS } from './refusals/extending.js';
import { INPUT_REFUSALS } from './refusals/input.js';
import { LEAVING_REFUSALS } from './refusals/leaving.js';
import { RELEASING_REFUSALS } from './refusals/releasing.js';
import { REPEATING_REFUSALS } from './refusals/repeating.js';
import { SIGNING_REFUSALS } from './refusals/signing.js';
import { WORKING_REFUSALS } from './refusals/working.js';
import { WRITING_UP_REFUSALS } from './refusals/writing-up.js';

const CATALOGUE = {
  ...INPUT_REFUSALS,
  ...WRITING_UP_REFUSALS,
  ...DEFERRING_REFUSALS,
  ...EXTENDING_REFUSALS,
  ...SIGNING_REFUSALS,
  ...LEAVING_REFUSALS,
  ...RELEASING_REFUSALS,
  ...REPEATING_REFUSALS,
  ...WORKING_REFUSALS,
};

export type RefusalCode = keyof typeof CATALOGUE;

export const REFUSALS: Readonly<Record<RefusalCode, RefusalEntry>> = CATALOGUE;

/** The names of the holes in a template. */
type Holes<Template extends string> = Template extends `${string}{${infer Name}}${infer Rest}`
  ? Name | Holes<Rest>
  : never;

type TemplatesOf<Code extends RefusalCode> = (typeof CATALOGUE)[Code]['sentence' | 'next'];

/** The facts that a refusal of this code must carry: one for each hole in its sentence and in what to do next. */
export type RefusalFacts<Code extends RefusalCode> = Readonly<
  Record<Holes<TemplatesOf<Code>>, string | number | readonly string[]>
>;
