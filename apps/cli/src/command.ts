/** One command: what it takes, what it is for, and how it answers. */
export interface Command {
  /** As it is typed, one word or two. */
  name: string;
  /** What follows the name: `--mel FILE --case FILE`. */
  takes: string;
  /** One line for `proviso help`. */
  summary: string;
  /** @throws UsageError for a mistake in the call or in a file */
  run(args: readonly string[]): Promise<Outcome>;
}

export interface Outcome {
  /** The answer as data, for `--json`. */
  value: unknown;
  /** The same in words; empty when the command has printed for itself. */
  words: string;
  /** 0 for an answer, however unwelcome; 1 for findings of a check. */
  exit: 0 | 1;
}
