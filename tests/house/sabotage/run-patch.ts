/**
 * Sabotage: proof that the tests would notice. Each patch breaks one rule on purpose, in a scratch copy of the project,
 * and at least one of the tests it names must turn red. A rule that can be broken with every test green is not tested.
 *
 * Patches stand in tests/house/sabotage/patches/*.yaml, each file a list of:
 *
 *     - rule: all is the least of its parts        # the rule that it breaks; unique, and the title of the check
 *       file: libs/dispatch/src/kleene.ts          # the one file that it changes
 *       find: return values.reduce(lesser, 'T');   # one line or a part of one, standing exactly once in the file
 *       replace: return values.reduce(greater, 'T');
 *       tests:                                     # the spec files to run: as few as should notice
 *         - libs/dispatch/src/kleene.spec.ts
 *
 * Where a run takes long, patches that do not touch each other's tests are applied at once: with `together`, a name that
 * they share, and `only`, a regular expression of the titles that must turn red by this one. At least one test of the run
 * has to stay green, so that it is not the run itself that fails. First try each of them alone.
 *
 * Write text that YAML could read otherwise (`: `, ` #`, a leading quote or bracket) in single quotes or after `|-`.
 * The patch must leave a program that still loads: a file that cannot be read turns everything red and proves nothing.
 * Try one patch alone with `npx vitest run --config .config/vitest.config.ts tests/house/sabotage -t '<rule>'`.
 */
import { spawn } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Scratch } from '../scratch.js';
import { misfit, type Patch } from './read-patches.js';

/** What came of the spec files: the titles that turned red and those that did not, or why nobody can tell. */
export interface Outcome {
  red: string[];
  green: string[];
  trouble: string | null;
}

interface Report {
  testResults: { name: string; message: string; assertionResults: { status: string; fullName: string }[] }[];
}

const NOTHING = { red: [], green: [] };
const LONGEST_MS = 300_000;

/** Breaks the rule in the scratch copy, runs the tests the patch names until the first turns red, and mends the copy. */
export function runPatch(scratch: Scratch, patch: Patch): Promise<Outcome> {
  return broken(scratch, [patch], () => runSpecs(scratch.root, patch.tests, ['--bail', '1']));
}

/** The same of several at once, and all of their tests. @returns by rule what is not as it should be; empty when all is */
export async function runTogether(scratch: Scratch, patches: readonly Patch[]): Promise<string[]> {
  const specs = [...new Set(patches.flatMap(({ tests }) => tests))];
  const { red, green, trouble } = await broken(scratch, patches, () => runSpecs(scratch.root, specs));
  if (trouble !== null) return [trouble];
  if (green.length === 0) return ['every test is red: the run itself fails'];
  return patches
    .filter(({ only = '' }) => !red.some((title) => new RegExp(only).test(title)))
    .map(({ rule, only }) => `${rule}: no test noticed that is called ${only}`);
}

async function broken(scratch: Scratch, patches: readonly Patch[], run: () => Promise<Outcome>): Promise<Outcome> {
  const trouble = patches.map((patch) => misfit(scratch.root, patch)).find((found) => found !== null) ?? null;
  if (trouble !== null) return { ...NOTHING, trouble };
  const read = (file: string): string => readFileSync(join(scratch.root, file), 'utf8');
  const sound = new Map(patches.map(({ file }) => [file, read(file)]));
  try {
    for (const { file, find, replace } of patches) scratch.write(file, read(file).split(find).join(replace));
    return await run();
  } finally {
    for (const [file, text] of sound) scratch.write(file, text);
  }
}

/** Runs spec files of a copy in a process of their own. */
export async function runSpecs(root: string, specs: string[], how: string[] = []): Promise<Outcome> {
  const report = join(root, '.test-output/report.json');
  rmSync(report, { force: true });
  const vitest = ['node_modules/vitest/vitest.mjs', 'run', '--config', '.config/vitest.config.ts'];
  const output = await finish(root, [...vitest, '--maxWorkers', '1', ...how, ...specs]);
  if (!existsSync(report)) return { ...NOTHING, trouble: `the tests gave no report: ${output.slice(-2000)}` };
  const { testResults } = JSON.parse(readFileSync(report, 'utf8')) as Report;
  const titles = (wanted: string): string[] =>
    testResults.flatMap(({ assertionResults }) =>
      assertionResults.filter(({ status }) => status === wanted).map(({ fullName }) => fullName),
    );
  const [red, green] = [titles('failed'), titles('passed')];
  const unread = testResults.find(({ message }) => message !== '');
  if (red.length > 0) return { red, green, trouble: null };
  if (unread) return { red, green, trouble: `${unread.name} could not be run: ${unread.message}` };
  return { red, green, trouble: green.length === 0 ? `no test ran: ${output.slice(-2000)}` : null };
}

/** The child must not take itself for a worker of the run that started it. */
async function finish(root: string, args: string[]): Promise<string> {
  const env = Object.fromEntries(
    Object.entries(process.env).filter(([name]) => !/^(VITEST|TEST$|NODE_ENV$|NODE_OPTIONS$)/.test(name)),
  );
  const child = spawn(process.execPath, args, {
    cwd: root,
    env,
    stdio: ['ignore', 'pipe', 'pipe'],
    timeout: LONGEST_MS,
  });
  let output = '';
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (chunk: Buffer) => (output += chunk.toString()));
  return new Promise((resolve, reject) => child.on('error', reject).on('close', () => resolve(output)));
}
