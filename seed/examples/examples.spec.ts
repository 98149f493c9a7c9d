import { describe, expect, test } from 'vitest';
import { judge, readCase, type Situation, type Verdict } from '#dispatch';
import { loadMel, type Mel } from '#mel';
import { readSeedFile } from '../seed-files.js';

const folder = import.meta.dirname;

const melOf = (): Mel => {
  const loaded = loadMel(readSeedFile(`${folder}/..`, 'mel.yaml'), 'mel.yaml');
  if ('errors' in loaded) throw new Error(JSON.stringify(loaded.errors));
  return loaded.mel;
};

const mel = melOf();

const situationOf = (name: string): Situation => {
  const read = readCase(readSeedFile(folder, name), name, mel, 'unknown');
  if ('errors' in read) throw new Error(JSON.stringify(read.errors));
  return read.situation;
};

const judged = (name: string): Promise<Verdict> => judge(mel, situationOf(name));

/** The case with only some of its defects open. */
const withOnly = (situation: Situation, ids: string[]): Situation => ({
  ...situation,
  defects: situation.defects.filter(({ id }) => ids.includes(id)),
});

describe('the example cases give the answer that stands in their first line', () => {
  test('may fly', async () => {
    expect((await judged('may-fly.yaml')).verdict).toBe('may-fly');
  });

  test('may fly after work: the valve by hand and the briefing', async () => {
    const verdict = await judged('after-work.yaml');
    expect(verdict.verdict).toBe('after-work');
    expect(verdict.work.map(({ work }) => work)).toEqual(['80-12-11/1/M2', '80-12-11/1/O1']);
    expect(verdict.workMinutes).toBe(20);
    expect(verdict.earliestOffBlockAt).toBe('2026-01-15T06:10:00Z');
  });

  test('may not fly', async () => {
    expect((await judged('may-not-fly.yaml')).verdict).toBe('may-not-fly');
  });
});

describe('a conflict of three that no pair shows', () => {
  const all = situationOf('may-not-fly.yaml');
  const ids = all.defects.map(({ id }) => id);

  test.each(
    [...ids.map((one) => [one]), ...ids.map((one) => ids.filter((id) => id !== one))].map(
      (some) => [some.join(' and '), some] as const,
    ),
  )('%s alone may fly', async (_, some) => {
    expect((await judge(mel, withOnly(all, [...some]))).verdict).toBe('may-fly');
  });
});
