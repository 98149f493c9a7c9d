import type { Command } from '../command.js';
import type { Option } from '../options.js';
import { sentence, WIDTH, wrapped } from './wrapped.js';

const JSON_TOO: Option = { name: 'json', value: null, about: 'answer as JSON on standard output, not in words' };
const HELP_TOO: Option = { name: 'help', value: null, about: 'this text' };
const WIDEST_NAME = 24;

/** Every command with one line. */
export function list(commands: readonly Command[]): string {
  const widest = Math.max(...commands.map(({ name }) => name.length));
  const indent = ' '.repeat(widest + 4);
  return [
    'proviso <command> [options]',
    '',
    ...commands.flatMap(({ name, summary }) => sentence(summary, `  ${name.padEnd(widest)}  `, indent)),
    '',
    ...sentence('`proviso help <command>` explains every option of one, with an example.', ''),
    ...sentence('Each answers in words, or with --json as JSON on standard output.', ''),
    '',
    ...exits('findings of a check'),
  ].join('\n');
}

/** All there is to know about one command. */
export function helpOn(command: Command): string {
  const { name, files = [], options, summary, notes = [], examples, exitsWithOne } = command;
  const all = [...options, JSON_TOO, HELP_TOO];
  const about = [...files.map((one) => [one.name, one.about] as const), ...all.map(explained)];
  const widest = Math.min(WIDEST_NAME, Math.max(...about.map(([one]) => one.length)));
  return [
    ...wrapped([...files.map((one) => one.name), ...all.slice(0, -1).map(synopsis)], `proviso ${name} `, '    '),
    '',
    ...sentence(`${summary[0]?.toUpperCase()}${summary.slice(1)}.`, '  '),
    ...notes.flatMap((note) => ['', ...sentence(note, '  ')]),
    '',
    ...about.flatMap(([one, text]) => line(one, text, widest)),
    '',
    examples.length === 1 ? 'Example' : 'Examples',
    ...examples.flatMap(exampleLines),
    '',
    ...exits(exitsWithOne),
  ].join('\n');
}

/** Broken before an option alone, so that it may be copied as it stands. */
function exampleLines(example: string): string[] {
  const whole = `  proviso ${example}`;
  if (whole.length <= WIDTH) return [whole];
  const lines = [''];
  for (const part of whole.trimEnd().split(/ (?=--)/)) {
    const last = lines.at(-1) ?? '';
    const longer = last === '' ? part : `${last} ${part}`;
    if (last === '' || longer.length <= WIDTH - 2) lines.splice(-1, 1, longer);
    else lines.push(`      ${part}`);
  }
  return lines.map((line, index) => (index < lines.length - 1 ? `${line} \\` : line));
}

function synopsis(option: Option): string {
  const words = nameOf(option);
  return option.must ? words : `[${words}]`;
}

const nameOf = ({ name, value }: Option): string => (value === null ? `--${name}` : `--${name} ${value}`);

const explained = (option: Option) =>
  [nameOf(option), option.must ? `${option.about} (must be given)` : option.about] as const;

/** A name too long for its column stands on a line of its own. */
function line(name: string, about: string, widest: number): string[] {
  const indent = ' '.repeat(widest + 4);
  if (name.length > widest) return [`  ${name}`, ...sentence(about, indent)];
  return sentence(about, `  ${name.padEnd(widest)}  `, indent);
}

function exits(one: string | undefined): string[] {
  return [
    'Exit code',
    '  0  an answer, however unwelcome',
    ...(one === undefined ? [] : sentence(one, '  1  ', '     ')),
    '  2  a mistake in the call, in a file or in what the database answers: one line',
    '     on standard error says what and where',
    '  3  a fault of this program',
  ];
}
