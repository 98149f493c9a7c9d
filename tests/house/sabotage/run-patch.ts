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
 *       only: of its parts                         # where whole files take long: the titles to run, a regular expression
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

/** What came of the spec files: the titles that turned red, or why nobody can tell. */
export interface Outcome {
  red: string[];
  trouble: string | null;
}

interface Report {
  testResults: { name: string; message: string; assertionResults: { status: string; fullName: string }[] }[];
}

const RAN = ['passed', 'failed'];
const LONGEST_MS = 300_000;

/** Breaks the rule in the scratch copy, runs the tests the patch names until the first turns red, and mends the copy. */
export async function runPatch(scratch: Scratch, patch: Patch): Promise<Outcome> {
  const trouble = misfit(scratch.root, patch);
  if (trouble !== null) return { red: [], trouble };
  const sound = readFileSync(join(scratch.root, patch.file), 'utf8');
  scratch.write(patch.file, sound.split(patch.find).join(patch.replace));
  try {
    return await runSpecs(scratch.root, patch.tests, patch.only);
  } finally {
    scratch.write(patch.file, sound);
  }
}

/** Runs spec files of a copy in a process of their own, and stops at the first that turns red. */
export async function runSpecs(root: string, specs: string[], only?: string): Promise<Outcome> {
  const report = join(root, '.test-output/report.json');
  rmSync(report, { force: true });
  const vitest = ['node_modules/vitest/vitest.mjs', 'run', '--config', '.config/vitest.config.ts', '--bail', '1'];
  const titles = only === undefined ? [] : ['--testNamePattern', only];
  const output = await finish(root, [...vitest, '--maxWorkers', '1', ...titles, ...specs]);
  if (!existsSync(report)) return { red: [], trouble: `the tests gave no report: ${output.slice(-2000)}` };
  const { testResults } = JSON.parse(readFileSync(report, 'utf8')) as Report;
  const red = testResults.flatMap(({ assertionResults }) =>
    assertionResults.filter(({ status }) => status === 'failed').map(({ fullName }) => fullName),
  );
  const ran = testResults.flatMap(({ assertionResults }) =>
    assertionResults.filter(({ status }) => RAN.includes(status)),
  );
  const unread = testResults.find(({ message }) => message !== '');
  if (red.length > 0) return { red, trouble: null };
  if (unread) return { red, trouble: `${unread.name} could not be run: ${unread.message}` };
  return { red, trouble: ran.length === 0 ? `no test ran: ${output.slice(-2000)}` : null };
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
