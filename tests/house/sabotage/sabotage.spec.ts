import { appendFileSync, mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { projectRoot } from '../scratch.js';
import { Lanes } from './lanes.js';
import { misfit, readPatches } from './read-patches.js';
import { runPatch, runSpecs, runTogether } from './run-patch.js';

const TEN_MINUTES = 600_000;
/** Which test turned red for which rule, one line each. */
const LIST = join(projectRoot, '.test-output/sabotage.txt');
const patches = readPatches(fileURLToPath(new URL('patches', import.meta.url)));
const single = patches.filter((patch) => patch.together === undefined);
const together = [...new Set(patches.flatMap((patch) => patch.together ?? []))];

it('finds the place of every patch', () => {
  expect(patches.flatMap((patch) => misfit(projectRoot, patch) ?? [])).toEqual([]);
});

describe('a broken rule turns a test red', { timeout: TEN_MINUTES }, () => {
  let lanes: Lanes;
  beforeAll(() => {
    mkdirSync(join(projectRoot, '.test-output'), { recursive: true });
    rmSync(LIST, { force: true });
    lanes = new Lanes(2);
  });
  afterAll(() => lanes.dispose());

  it('and no test is red while nothing is broken', async () => {
    const specs = [...new Set(single.flatMap(({ tests }) => tests))];
    const { red, trouble } = await lanes.use((copy) => runSpecs(copy.root, specs, ['--bail', '1']));
    expect({ red, trouble }).toEqual({ red: [], trouble: null });
  });

  describe.concurrent('of', () => {
    it.each(single.map((patch) => [patch.rule, patch] as const))('%s', async (rule, patch) => {
      const { red, trouble } = await lanes.use((copy) => runPatch(copy, patch));
      if (trouble !== null) throw new Error(trouble);
      expect(red, `no test of ${patch.tests.join(', ')} noticed`).not.toEqual([]);
      appendFileSync(LIST, `${rule} -> ${red.join('; ')}\n`);
    });

    it.each(together)('several at once: %s', async (name) => {
      const of = patches.filter((patch) => patch.together === name);
      expect(await lanes.use((copy) => runTogether(copy, of))).toEqual([]);
      appendFileSync(LIST, of.map(({ rule, only }) => `${rule} -> ${only}\n`).join(''));
    });
  });
});
