/**
 * Two evaluators prove something only as long as they do not share what could be wrong in both. They may share the tree as
 * it was loaded, with its sentences, the shape of a fact and that of an answer: those files are named here, and no others.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { makeScratch, projectRoot, type Scratch } from './scratch.js';

const ENGINE = 'libs/dispatch/src/evaluate/proviso-engine.ts';
const CLOSURES = 'libs/dispatch/src/compiled/closure.ts';
const SHARED = ['compiled-proviso', 'marker', 'plan'].map((name) => `libs/dispatch/src/evaluate/${name}.ts`);

interface Cruised {
  modules: { source: string; dependencies: { resolved: string }[] }[];
}

/** What both evaluators import, directly or by others, of the lib that they stand in. */
function sharedIn(root: string): string[] {
  const args = ['--config', '.dependency-cruiser.cjs', '--output-type', 'json', ENGINE, CLOSURES];
  const run = spawnSync(join(root, 'node_modules/.bin/depcruise'), args, {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  const { modules } = JSON.parse(run.stdout) as Cruised;
  const imports = new Map(
    modules.map(({ source, dependencies }) => [source, dependencies.map((one) => one.resolved)]),
  );
  const reachedFrom = (start: string): Set<string> => {
    const reached = new Set<string>();
    const waiting = [start];
    for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
      if (reached.has(next) || !next.startsWith('libs/dispatch/')) continue;
      reached.add(next);
      waiting.push(...(imports.get(next) ?? []));
    }
    return reached;
  };
  const [engine, closures] = [reachedFrom(ENGINE), reachedFrom(CLOSURES)];
  // Of an answer they share the words alone: the file holds types and one table.
  return [...engine].filter((file) => closures.has(file) && file !== 'libs/dispatch/src/verdict.ts').sort();
}

let scratch: Scratch;
beforeAll(() => {
  scratch = makeScratch();
});
afterAll(() => scratch.dispose());

it('the two evaluators share the loaded tree and nothing else', () => expect(sharedIn(projectRoot)).toEqual(SHARED));

it('and one that borrows from the other, by whatever way, is found', () => {
  const closure = readFileSync(join(projectRoot, CLOSURES), 'utf8');
  scratch.write('libs/dispatch/src/compiled/plant.ts', "export { compares } from '../evaluate/compare.js';\n");
  scratch.write(CLOSURES, `export { compares } from './plant.js';\n${closure}`);
  const borrowed = ['libs/dispatch/src/evaluate/compare.ts', 'libs/dispatch/src/kleene.ts'];
  expect(sharedIn(scratch.root)).toEqual([...SHARED, ...borrowed].sort());
});
