/** The help of the command: it explains every option that the program reads, and fits a terminal. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../apps/cli/src/commands.js';
import { readGiven } from '../../apps/cli/src/options.js';
import { run } from '../../apps/cli/src/run.js';

const SOURCES = fileURLToPath(new URL('../../apps/cli/src', import.meta.url));
const NAMES = COMMANDS.map(({ name }) => name);
const helpOn = async (name: string): Promise<string> => (await run(['help', ...name.split(' ')])).stdout;

describe.each(NAMES)('proviso help %s', (name) => {
  const command = COMMANDS.find((one) => one.name === name);
  if (!command) throw new Error(name);

  it('fits 80 columns', async () => {
    expect((await helpOn(name)).split('\n').filter((line) => line.length > 80)).toEqual([]);
  });

  it('is said by --help, too', async () => {
    expect(await run([...name.split(' '), '--help'])).toEqual(await run(['help', ...name.split(' ')]));
  });

  it('explains each option and each word on a line of its own', async () => {
    const text = await helpOn(name);
    const parts = [
      ...(command.files ?? []).map((one) => one.name),
      ...command.options.map((one) => `--${one.name}${one.value === null ? '' : ` ${one.value}`}`),
      '--json',
      '--help',
    ];
    const lines = text.split('\n');
    const explained = (part: string) =>
      lines.some((line, at) => {
        if (line === `  ${part}`) return /^ {6,}\S/.test(lines[at + 1] ?? '');
        return line.startsWith(`  ${part}  `);
      });
    expect(parts.filter((part) => !explained(part))).toEqual([]);
  });

  it('has examples that may be typed as they stand, and says what an exit code means', async () => {
    const text = await helpOn(name);
    expect(text).toMatch(/^Examples?\n {2}proviso /m);
    expect(text).toMatch(/^ {2}0 {2}.+\n(?: {2}1 {2}.+\n(?: {5}.+\n)*)? {2}2 {2}/m);
    for (const example of command.examples) {
      const words = [...example.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? '');
      const given = readGiven(words.slice(name.split(' ').length), command.options);
      expect(words.slice(0, name.split(' ').length).join(' ')).toBe(name);
      expect(given.files).toHaveLength(command.files?.length ?? 0);
      expect(command.options.filter((one) => one.must && !given.options.has(one.name))).toEqual([]);
    }
  });
});

it('no option is read that no command declares', () => {
  const declared = new Set(COMMANDS.flatMap(({ options }) => options.map((one) => one.name)));
  const files = readdirSync(SOURCES, { recursive: true, encoding: 'utf8' });
  const sources = files.filter((file) => file.endsWith('.ts') && !file.endsWith('.spec.ts'));
  const read = sources.flatMap((file) =>
    [
      ...readFileSync(join(SOURCES, file), 'utf8').matchAll(
        /(?:options\.(?:get|has)|needed\(\w+,|either|wholeOf\(given,)\(?\s*'([a-z-]+)'/g,
      ),
    ].map(([, name = '']) => name),
  );
  expect(read.length).toBeGreaterThan(20);
  expect([...new Set(read)].filter((name) => !declared.has(name))).toEqual([]);
});

it('the list has every command, none wider than a terminal', async () => {
  const { stdout } = await run([]);
  expect(stdout.split('\n').filter((line) => line.length > 80)).toEqual([]);
  const listed = [...stdout.matchAll(/^ {2}([a-z]+(?: [a-z]+)?) {2,}\S/gm)].map(([, name]) => name);
  expect(listed).toEqual(NAMES);
});
