import { appendFileSync, mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { projectRoot } from '../scratch.js';
import { Lanes } from './lanes.js';
import { misfit, type Patch, readPatches } from './read-patches.js';
import { runPatch, runSpecs } from './run-patch.js';

const TEN_MINUTES = 600_000;
/** Which test turned red for which rule, one line each. */
const LIST = join(projectRoot, '.test-output/sabotage.txt');
const GREEN = { red: [], trouble: null };
const specsOf = (some: readonly Patch[]) => [...new Set(some.flatMap(({ tests }) => tests))];
const patches = readPatches(fileURLToPath(new URL('patches', import.meta.url)));

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
    const whole = patches.filter(({ only }) => only === undefined);
    const outcome = await lanes.use((copy) => runSpecs(copy.root, specsOf(whole)));
    expect(outcome).toEqual(GREEN);
  });

  it('nor any of those that are run alone', async () => {
    const alone = patches.filter(({ only }) => only !== undefined);
    for (const spec of specsOf(alone)) {
      const titles = alone.filter(({ tests }) => tests.includes(spec)).map(({ only }) => only);
      expect(await lanes.use((copy) => runSpecs(copy.root, [spec], titles.join('|'))), spec).toEqual(GREEN);
    }
  });

  describe.concurrent('of', () => {
    it.each(patches.map((patch) => [patch.rule, patch] as const))('%s', async (rule, patch) => {
      const { red, trouble } = await lanes.use((copy) => runPatch(copy, patch));
      if (trouble !== null) throw new Error(trouble);
      expect(red, `no test of ${patch.tests.join(', ')} noticed`).not.toEqual([]);
      appendFileSync(LIST, `${rule} -> ${red.join('; ')}\n`);
    });
  });
});
