import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { HOUSE_LAWS } from './names-and-sizes.js';

/** A law that fired, written `cruise <rule>`, `lint <law or rule>` or `house <law>`, and the file it fired on. */
export interface Fired {
  law: string;
  path: string;
  says: string;
}

interface LintReport {
  diagnostics: { code?: string; help?: string; message: string; filename: string }[];
  number_of_files: number;
}

interface Violation {
  from: string;
  to: string;
  rule: { name: string };
  /** The files of the circle, for a cycle. */
  cycle?: { name: string }[];
}

interface CruiseReport {
  modules: { source: string }[];
  summary: { violations: Violation[]; ruleSetUsed: { forbidden: { name: string }[] } };
}

const FOLDERS = ['apps', 'libs', 'seed', 'tests'];

/** Runs an installed tool and reads its JSON. Both tools exit with 1 when something fires; that is an answer. */
function report<T>(root: string, bin: string, args: string[]): T {
  const run = spawnSync(join(root, 'node_modules/.bin', bin), args, {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  try {
    return JSON.parse(run.stdout) as T;
  } catch {
    throw new Error(`${bin} gave no report in ${root}: ${run.stderr || run.stdout || String(run.error)}`);
  }
}

/** A law of ours stands in brackets before its advice; other rules go by the tool's own name for them. */
export function lint(root: string): { fired: Fired[]; files: number } {
  const args = ['-c', '.oxlintrc.json', '--disable-nested-config', '--format', 'json', ...FOLDERS, '.config'];
  const { diagnostics, number_of_files } = report<LintReport>(root, 'oxlint', args);
  const fired = diagnostics.map(({ code, help, message, filename }) => ({
    law: `lint ${/^\[([a-z-]+)\]/.exec(help ?? '')?.[1] ?? /\[([a-z-]+)\]/.exec(message)?.[1] ?? code ?? message}`,
    path: filename,
    says: `${message} ${help ?? ''}`,
  }));
  return { fired, files: number_of_files };
}

/** A cycle fires on every file in it. `cruised` holds the project's own modules that were opened and read, not the packages they lead to. */
export function cruise(root: string): { fired: Fired[]; cruised: string[]; rules: string[] } {
  const args = ['--config', '.dependency-cruiser.cjs', '--output-type', 'json', ...FOLDERS];
  const { modules, summary } = report<CruiseReport>(root, 'depcruise', args);
  const ours = /^(apps|libs|seed|tests)\/(?!.*\.json$)/;
  return {
    fired: summary.violations.flatMap(({ from, to, rule, cycle }) =>
      (cycle?.map(({ name }) => name) ?? [from]).map((path) => ({
        law: `cruise ${rule.name}`,
        path,
        says: `imports ${to}`,
      })),
    ),
    // A .mjs file that another one imports is reported twice: as opened, and as led to.
    cruised: [...new Set(modules.map(({ source }) => source))].filter((source) => ours.test(source)).sort(),
    rules: summary.ruleSetUsed.forbidden.map(({ name }) => name),
  };
}

export function inspectHouse(root: string): Fired[] {
  return HOUSE_LAWS.flatMap(({ law, advice, broken }) =>
    broken(root).map((path) => ({ law: `house ${law}`, path, says: advice })),
  );
}
