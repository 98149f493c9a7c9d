import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeScratch, type Scratch } from '../scratch.js';
import { type Patch, readPatches } from './read-patches.js';
import { runPatch, runSpecs, runTogether } from './run-patch.js';

describe('the saboteur', () => {
  const file = 'tests/house/saboteur/bigger.ts';
  const spec = 'tests/house/saboteur/bigger.spec.ts';
  const code = '// The greater of two numbers.\nexport const bigger = (a: number, b: number) => (a > b ? a : b);\n';
  let scratch: Scratch;
  beforeAll(() => {
    scratch = makeScratch();
    scratch.write(file, code);
    scratch.write(
      spec,
      "import { expect, it } from 'vitest';\nimport { bigger } from './bigger.js';\nit('takes the bigger', () => expect(bigger(1, 2)).toBe(2));\n",
    );
  });
  afterAll(() => scratch.dispose());
  const patch = (find: string, replace: string): Patch => ({
    rule: 'bigger wins',
    file,
    find,
    replace,
    tests: [spec],
  });

  it('names the test that turns red, and mends what it broke', async () => {
    expect(await runPatch(scratch, patch('a > b', 'a < b'))).toMatchObject({
      red: ['takes the bigger'],
      trouble: null,
    });
    expect(await runSpecs(scratch.root, [spec])).toEqual({ red: [], green: ['takes the bigger'], trouble: null });
  });

  it('breaks several rules at once, and tells which of them no test noticed', async () => {
    scratch.write(
      spec,
      "import { expect, it } from 'vitest';\nimport { bigger } from './bigger.js';\nit('takes the bigger', () => expect(bigger(1, 2)).toBe(2));\nit('takes one of both', () => expect([1, 2]).toContain(bigger(1, 2)));\n",
    );
    const broken = { ...patch('a > b', 'a < b'), together: 'both', only: 'the bigger$' };
    const kept = { ...patch('greater of', 'bigger of'), rule: 'words', together: 'both', only: 'one of both' };
    expect(await runTogether(scratch, [broken])).toEqual([]);
    expect(await runTogether(scratch, [broken, kept])).toEqual(['words: no test noticed that is called one of both']);
    const all = { ...patch('? a : b', '? 7 : 8'), together: 'both', only: 'takes' };
    expect(await runTogether(scratch, [all])).toEqual(['every test is red: the run itself fails']);
  });

  it('finds no red test when a patch breaks no rule', async () => {
    expect(await runPatch(scratch, patch('greater of', 'bigger of'))).toMatchObject({ red: [], trouble: null });
  });

  it('does not take a file that cannot be read for a red test', async () => {
    const { red, trouble } = await runPatch(scratch, patch('a > b', 'a >'));
    expect(red).toEqual([]);
    expect(trouble).toMatch(/bigger\.spec\.ts could not be run/);
  });

  it('refuses a patch whose place is not there, or there twice, or whose tests are not there', async () => {
    expect((await runPatch(scratch, patch('a >= b', 'a < b'))).trouble).toBe(
      `\`a >= b\` stands 0 times in ${file}, and must stand there once`,
    );
    expect((await runPatch(scratch, patch(': number', ': string'))).trouble).toMatch(/stands 2 times/);
    const untested = { ...patch('a > b', 'a < b'), tests: ['tests/nowhere.spec.ts'] };
    expect((await runPatch(scratch, untested)).trouble).toBe('there is no file tests/nowhere.spec.ts');
  });
});

describe('a file of patches', () => {
  let folder: string;
  beforeAll(() => (folder = mkdtempSync(join(tmpdir(), 'proviso-patches-'))));
  afterAll(() => rmSync(folder, { recursive: true }));
  const read = (yaml: string) => {
    writeFileSync(join(folder, 'some.yaml'), yaml);
    return () => readPatches(folder);
  };
  const good = '{ rule: r, file: f.ts, find: a, replace: b, tests: [f.spec.ts] }';

  it('gives its patches', () => {
    expect(read(`- ${good}`)()).toEqual([{ rule: 'r', file: 'f.ts', find: 'a', replace: 'b', tests: ['f.spec.ts'] }]);
  });

  it('is refused with its name and the place when something is wrong with a patch', () => {
    expect(read(good)).toThrow('some.yaml: a list of patches is needed');
    expect(read(`- ${good}\n- { rule: s }`)).toThrow('some.yaml, patch 2: needs rule, file, find, replace, tests');
    expect(read(`- ${good.replace('find: a', 'find: b')}`)).toThrow('some.yaml, patch 1: it changes nothing');
    expect(read(`- ${good.replace('[f.spec.ts]', '[]')}`)).toThrow(
      'some.yaml, patch 1: tests is a list of spec files',
    );
    expect(read(`- ${good.replace('find: a', 'find: "a\\nb"')}`)).toThrow(
      'some.yaml, patch 1: a patch changes one line',
    );
    expect(read(`- ${good.replace('find: a', 'find: 1')}`)).toThrow('are texts');
    expect(read(`- ${good.replace('rule: r', 'rule: r, only: x')}`)).toThrow('together and only go together');
    expect(read(`- ${good}\n- ${good}`)).toThrow('two patches are called "r"');
  });
});
