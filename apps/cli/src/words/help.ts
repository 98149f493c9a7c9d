import type { Command } from '../command.js';

/** Every command with one line. */
export function list(commands: readonly Command[]): string {
  const widest = Math.max(...commands.map(({ name }) => name.length));
  return [
    'proviso <command> [--json]',
    '',
    ...commands.map(({ name, summary }) => `  ${name.padEnd(widest)}  ${summary}`),
    '',
    'Answers in words, or as JSON with --json. `proviso help <command>` says what a command takes.',
    'Exit 0 for an answer, also an unwelcome one; 1 for findings of a check; 2 for a mistake in the call or in a file.',
  ].join('\n');
}

export function helpOn({ name, takes, summary }: Command): string {
  return [`proviso ${name} ${takes} [--json]`, '', `  ${summary}`].join('\n');
}
