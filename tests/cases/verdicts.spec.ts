/**
 * Every published verdict and row that one flight and recorded rows can decide, through the door that `proviso judge`
 * uses: a case file, a MEL file, the rules engine.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { judge, readCase, type Situation, type VerdictCode } from '#dispatch';
import { readMel, type Mel } from '#mel';

interface VerdictCase {
  id: string;
  mel: string;
  source: string;
  mark: string;
  basis: string;
  expect: VerdictCode;
  says?: string[];
  asks?: string[];
  down?: string[];
  defects?: { recordedAt?: string }[];
  [part: string]: unknown;
}

const text = (file: string): string => readFileSync(new URL(file, import.meta.url), 'utf8');

const { defaults, cases } = parse(text('verdicts.yaml'), { merge: true }) as {
  defaults: { recordedAt: string; [part: string]: unknown };
  cases: VerdictCase[];
};

const mels = new Map(
  ['t1', 't2', 'stand-ins'].map((name): [string, Mel] => {
    const file = `published-rows-${name}.yaml`;
    const loaded = readMel(text(file), file);
    if ('errors' in loaded) throw new Error(JSON.stringify(loaded.errors));
    return [name, loaded.mel];
  }),
);

const TOLD = new Set(['id', 'mel', 'source', 'mark', 'basis', 'expect', 'proposed', 'says', 'asks', 'down']);

/** Numbers of the rows and verdicts that were read out of published texts. */
const PUBLISHED =
  'P-01 P-02 P-03 P-04 P-05 P-06 P-07 P-09 P-10 P-11 P-12 P-14 P-15 P-18 P-19 P-22 P-23 P-28 P-30 P-36 P-39 P-49 P-53 ' +
  'P-54 P-56 P-57 P-58 P-61 P-70 P-71 P-73 P-76 P-78 P-79 P-80 P-85 P-86 P-91 ' +
  'V-01 V-03 V-04 V-08 V-09 V-10 V-11 V-12 V-13 V-14 V-16 V-18 V-19 V-20 V-24 V-26 V-27 V-29 V-30 V-33 V-36 V-37 V-38 ' +
  'V-41 V-47';

function situationOf(one: VerdictCase): Situation {
  if ([one.source, one.mark, one.basis].some((part) => typeof part !== 'string')) {
    throw new Error(`${one.id} lacks source, mark or basis`);
  }
  const { recordedAt, ...rest } = defaults;
  const given = Object.fromEntries(Object.entries(one).filter(([part]) => !TOLD.has(part)));
  const defects = (one.defects ?? []).map((defect) => ({ recordedAt, ...defect }));
  const read = readCase({ ...rest, ...given, defects }, one.id, mels.get(one.mel)!, '2026a');
  if ('errors' in read) throw new Error(JSON.stringify(read.errors));
  return read.situation;
}

describe('the published verdicts', () => {
  it('are each told once', () => {
    expect(cases.map(({ id }) => id)).toEqual([...new Set(cases.map(({ id }) => id))]);
    expect(cases.length).toBeGreaterThan(80);
  });

  it('are all there: each published row, and each published verdict, by its number', () => {
    const told = ['verdicts', 'proposals', 'next-flights'].map((name) => text(`${name}.yaml`)).join('\n');
    const missing = PUBLISHED.split(' ').filter(
      (number) => !new RegExp(`(?:id|story): .*\\b${number}\\b`).test(told),
    );
    expect(missing).toEqual([]);
  });

  it.each(cases.map((one) => [one.id, one] as const))('%s', async (_id, one) => {
    const verdict = await judge(mels.get(one.mel)!, situationOf(one));
    expect(verdict.verdict, verdict.reasons.join('\n')).toBe(one.expect);
    const words = [
      ...verdict.reasons,
      ...verdict.refusedRows.flatMap(({ because }) => because),
      ...verdict.work.map((work) => work.text),
    ].join('\n');
    for (const said of one.says ?? []) expect(words).toContain(said);
    if (one.asks !== undefined) expect(verdict.questions.map(({ fact }) => fact)).toEqual(one.asks);
    const items = verdict.items.map(({ entry, unit }) => `${entry}/${unit}`);
    expect(items).toEqual(expect.arrayContaining(one.down ?? []));
  });
});
