/**
 * A refusal: something was asked for that may not be done.
 *
 * It is thrown where the rule stands, carries a code, the sentence with its facts filled in, what to do next, and the
 * paragraph it comes from, and ends in whatever shows it to a person. It knows nothing of HTTP. An unwelcome answer (this
 * flight may not fly) is no refusal but a value; it reads from the same catalogue.
 */
import { REFUSALS, type RefusalCode, type RefusalFacts } from './refusals.js';

export type FactValue = string | number | readonly string[];

export class Refusal<Code extends RefusalCode = RefusalCode> extends Error {
  readonly code: Code;
  readonly facts: Readonly<Record<string, FactValue>>;
  /** What to do next, facts filled in. */
  readonly next: string;
  /** Where the rule stands. */
  readonly paragraph: string;

  constructor(code: Code, facts: RefusalFacts<Code>) {
    const { sentence, next, paragraph } = reason(code, facts);
    super(sentence);
    this.name = 'Refusal';
    this.code = code;
    this.facts = facts;
    this.next = next;
    this.paragraph = paragraph;
  }
}

/** A reason in an answer: the same words as a refusal, returned instead of thrown. */
export interface Reason {
  code: RefusalCode;
  sentence: string;
  next: string;
  paragraph: string;
}

export function reason<Code extends RefusalCode>(code: Code, facts: RefusalFacts<Code>): Reason {
  const { sentence, next, paragraph } = REFUSALS[code];
  return { code, sentence: fill(sentence, facts), next: fill(next, facts), paragraph };
}

/** Puts the facts into a template: `{name}` becomes the fact of that name, a list is joined by "; ". */
function fill(template: string, facts: Record<string, FactValue>): string {
  return template.replace(/\{(\w+)\}/g, (_, name: string) => {
    const value = facts[name];
    if (value === undefined) throw new Error(`The fact "${name}" is missing for the sentence: ${template}`);
    return Array.isArray(value) ? value.join('; ') : String(value);
  });
}
