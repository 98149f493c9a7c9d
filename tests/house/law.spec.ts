import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { HOUSE_LAWS } from './names-and-sizes.js';
import { allPlants, plantText } from './plants.js';
import { makeScratch, projectRoot, type Scratch } from './scratch.js';
import { cruise, type Fired, inspectHouse, lint } from './tools.js';
import { sourceFiles } from './tree.js';

const plants = allPlants();
const inWords = (fired: Fired[]): string[] => fired.map(({ law, path, says }) => `${path}: ${law}. ${says}`);
const lawsOn = (fired: Fired[], path: string): string[] =>
  [...new Set(fired.flatMap((one) => (one.path === path ? [one.law] : [])))].sort();

describe('the project', () => {
  it('breaks no import law, and every source file on the disk was looked at', () => {
    const { fired, cruised } = cruise(projectRoot);
    expect(inWords(fired)).toEqual([]);
    expect(cruised).toEqual(sourceFiles(projectRoot));
  });

  it('breaks no law of what code may touch, and every source file on the disk was looked at', () => {
    const { fired, files } = lint(projectRoot);
    expect(inWords(fired)).toEqual([]);
    expect(files).toBeGreaterThanOrEqual(sourceFiles(projectRoot).length);
  });

  it('breaks no law of names and sizes', () => expect(inWords(inspectHouse(projectRoot))).toEqual([]));
});

/** The whole tree is copied, cruised and linted, on a machine that does other work. */
const WHOLE_TREE_MS = 600_000;

describe('a planted violation', () => {
  let scratch: Scratch;
  let fired: Fired[];
  let cruised: string[];
  let rules: string[];

  beforeAll(() => {
    scratch = makeScratch();
    for (const plant of plants) {
      for (const [path, text] of Object.entries(plant.with ?? {})) scratch.write(path, text);
      scratch.write(plant.in, plantText(plant), plant.mode);
    }
    const cruising = cruise(scratch.root);
    ({ cruised, rules } = cruising);
    fired = [...cruising.fired, ...lint(scratch.root).fired, ...inspectHouse(scratch.root)];
  }, WHOLE_TREE_MS);
  afterAll(() => scratch.dispose());

  it.each(plants.map((plant) => [plant.says, plant] as const))('%s', (_says, plant) => {
    expect(lawsOn(fired, plant.on ?? plant.in)).toEqual([...plant.fires].sort());
  });

  it('was looked at, with every other source file on the disk', () => {
    expect(cruised).toEqual(sourceFiles(scratch.root));
    expect(cruised).toEqual(
      expect.arrayContaining(plants.map((plant) => plant.in).filter((path) => /\.tsx?$/.test(path))),
    );
  });

  it('stands for every law that is written down', () => {
    const tags = readFileSync(join(projectRoot, '.oxlintrc.json'), 'utf8').matchAll(/"\[([a-z-]+)\]/g);
    const written = [
      ...rules.map((rule) => `cruise ${rule}`),
      ...[...tags].map(([, tag]) => `lint ${tag}`),
      ...HOUSE_LAWS.map(({ law }) => `house ${law}`),
    ];
    const planted = new Set(plants.flatMap((plant) => plant.fires));
    expect(written.filter((law) => !planted.has(law))).toEqual([]);
  });
});
