/**
 * A fact key names one fact about one subject: `flight.icing`, `flight.minimaNeed[22-10-01]`, `entry.up[32-42-01/1+2]`,
 * `work.done[32-42-01/1/M1]`. Two leaves with the same key ask for the same thing, so one answer serves both.
 */
import type { ConditionLeaf } from './content.js';
import { factOf, type FactDefinition } from './facts.js';

/** The key of the fact that a leaf asks for. Units are listed in code-unit order, so their order in the file is no matter. */
export const factKey = (leaf: Pick<ConditionLeaf, 'fact' | 'params'>): string => {
  const { entry, units, work, judgement } = leaf.params ?? {};
  const subject = entry ?? work ?? judgement;
  if (subject === undefined) return leaf.fact;
  const some = units === undefined ? '' : `/${[...units].sort().join('+')}`;
  return `${leaf.fact}[${subject}${some}]`;
};

/** A key taken apart; null when the fact is unknown or its subject is missing or superfluous. */
export const readFactKey = (key: string): { fact: FactDefinition; subject: string | null } | null => {
  const match = /^([A-Za-z.]{1,80})(?:\[([^[\]]{1,200})\])?$/.exec(key);
  const fact = match?.[1] === undefined ? undefined : factOf(match[1]);
  if (fact === undefined) return null;
  const subject = match?.[2] ?? null;
  return (fact.subject === 'none') === (subject === null) ? { fact, subject } : null;
};

/** The question to ask when a fact is unknown; `nameOf` gives the title of an entry, work or judgement. */
export const questionOf = (
  leaf: Pick<ConditionLeaf, 'fact' | 'params'>,
  nameOf: (subject: string) => string = (subject) => subject,
): string => {
  const fact = factOf(leaf.fact);
  if (fact === undefined) return `What is ${leaf.fact}?`;
  const subject = leaf.params?.entry ?? leaf.params?.work ?? leaf.params?.judgement ?? '';
  // A function as replacement: a title holding `$&` must come out as written.
  return fact.question.replace('{subject}', () => nameOf(subject));
};
