import type { Command } from './command.js';
import { COMMANDS } from './commands.js';
import { holdFiles, readGiven } from './options.js';
import { UsageError } from './usage-error.js';
import { helpOn, list } from './words/help.js';

/** What a call of the command gives: text for both outputs, and the exit code. */
export interface Ran {
  stdout: string;
  stderr: string;
  code: 0 | 1 | 2 | 3;
}

const LONGEST_LINE = 1_000;

/**
 * Runs one call of `proviso`. `argv` is what follows its name.
 *
 * 0 is an answer, however unwelcome; 1 are findings of a check; 2 is a mistake in the call or in what it was given, with
 * one line on standard error; 3 is a fault of this program. Never throws.
 */
export async function run(argv: readonly string[]): Promise<Ran> {
  try {
    return await answer(argv);
  } catch (error) {
    if (error instanceof UsageError) return refused(error.message, 2);
    const message = error instanceof Error ? error.message : String(error);
    return refused(`this is a fault of the program, not of your input: ${message}`, 3);
  }
}

async function answer(argv: readonly string[]): Promise<Ran> {
  const words = argv.filter((word) => word !== '--json');
  const wantsHelp = words.some((word) => word === '--help' || word === '-h');
  if (words.length === 0 || words[0] === 'help' || wantsHelp) return said(help(words, wantsHelp), 0);
  const command = commandIn(words);
  const given = readGiven(words.slice(partsOf(command).length), command.options);
  holdFiles(given, command);
  const { value, words: text, exit } = await command.run(given);
  return said(argv.includes('--json') ? JSON.stringify(value, null, 2) : text, exit);
}

function help(words: readonly string[], asked: boolean): string {
  const about = asked ? words.filter((word) => !word.startsWith('-')) : words.slice(1);
  return about.length === 0 ? list(COMMANDS) : helpOn(commandIn(about));
}

const partsOf = ({ name }: Command): string[] => name.split(' ');

function commandIn(words: readonly string[]): Command {
  const command = COMMANDS.find((one) => partsOf(one).every((part, index) => words[index] === part));
  if (command) return command;
  const isGroup = COMMANDS.some((one) => partsOf(one).length > 1 && partsOf(one)[0] === words[0]);
  const asked = words.slice(0, isGroup ? 2 : 1).join(' ');
  throw new UsageError(`there is no command "${asked}"; there are: ${COMMANDS.map(({ name }) => name).join(', ')}`);
}

/** A file may hold control characters; a terminal must not obey them. */
function said(text: string, code: 0 | 1): Ran {
  const plain = text.replace(/[^\P{Cc}\n]/gu, ' ');
  return { stdout: plain === '' ? '' : `${plain}\n`, stderr: '', code };
}

function refused(message: string, code: 2 | 3): Ran {
  const line = message.replace(/[\s\p{Cc}]+/gu, ' ').trim();
  const short = line.length > LONGEST_LINE ? `${line.slice(0, LONGEST_LINE)}...` : line;
  return { stdout: '', stderr: `proviso: ${short}\n`, code };
}
