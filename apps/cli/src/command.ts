import type { Given, Option } from './options.js';

/** One command: what it takes, what it is for, and how it answers. */
export interface Command {
  /** As it is typed, one word or two. */
  name: string;
  /** The bare words that must follow the name, in this order. */
  files?: readonly { name: string; about: string }[];
  options: readonly Option[];
  /** One line for `proviso help`. */
  summary: string;
  /** What is good to know before it is called, each a paragraph. */
  notes?: readonly string[];
  /** Calls that do something, without `proviso`. */
  examples: readonly string[];
  /** What exit code 1 means, where it can end with it. */
  exitsWithOne?: string;
  /** Said of a word that belongs to no option. */
  onStray?: string;
  /** @throws UsageError for a mistake in the call or in a file */
  run(given: Given): Promise<Outcome>;
}

export interface Outcome {
  /** The answer as data, for `--json`. */
  value: unknown;
  /** The same in words; empty when the command has printed for itself. */
  words: string;
  /** 0 for an answer, however unwelcome; 1 for findings of a check. */
  exit: 0 | 1;
}
