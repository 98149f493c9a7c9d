/** Every published verdict and story that needs a proposal of rows, and what goes with it: changes, repairs, refusals. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { leastToFix, propose, readCase, whyRefused, type Situation, type VerdictCode } from '#dispatch';
import { readMel, type Mel } from '#mel';

interface ProposalCase {
  id: string;
  mel: string;
  source: string;
  mark: string;
  basis: string;
  expect: VerdictCode;
  rows?: Record<string, string>;
  changes?: string[];
  repairs?: string[][];
  refused?: { defect: string; row: string; because: string[][] }[];
  asks?: string[];
  says?: string[];
  defects?: { recordedAt?: string }[];
  [part: string]: unknown;
}

const TOLD = new Set('id mel source mark basis expect rows changes repairs refused asks says'.split(' '));
const text = (file: string): string => readFileSync(new URL(file, import.meta.url), 'utf8');

const { defaults, cases } = parse(text('proposals.yaml'), { merge: true }) as {
  defaults: { recordedAt: string; [part: string]: unknown };
  cases: ProposalCase[];
};

const mels = new Map(
  ['t1', 'stand-ins'].map((name): [string, Mel] => {
    const file = `published-rows-${name}.yaml`;
    const loaded = readMel(text(file), file);
    if ('errors' in loaded) throw new Error(JSON.stringify(loaded.errors));
    return [name, loaded.mel];
  }),
);

function situationOf(one: ProposalCase): Situation {
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

const inOrder = (sets: readonly string[][]): string[][] => sets.map((set) => [...set].sort()).sort();

describe('the published verdicts that need a proposal', () => {
  it.each(cases.map((one) => [one.id, one] as const))('%s', async (_id, one) => {
    const [mel, situation] = [mels.get(one.mel)!, situationOf(one)];
    const { verdict, rows, shownBest } = await propose(mel, situation);
    expect(verdict.verdict, verdict.reasons.join('\n')).toBe(one.expect);
    expect(shownBest).toBe(true);
    const proposed = Object.fromEntries(rows.map(({ defect, row }) => [defect, row]));
    if (one.rows !== undefined) expect(proposed).toEqual(one.rows);
    const changes = rows.flatMap(({ defect, isChange }) => (isChange ? [defect] : []));
    if (one.changes !== undefined) expect(changes).toEqual(one.changes);
    if (one.asks !== undefined) expect(verdict.questions.map(({ fact }) => fact)).toEqual(one.asks);
    const said = [...verdict.reasons, ...verdict.work.map((work) => work.text)].join('\n');
    for (const words of one.says ?? []) expect(said).toContain(words);
    if (one.repairs !== undefined) {
      expect(leastToFix(mel, situation).repairs.map(({ defects }) => defects)).toEqual(one.repairs);
    }
    if (one.refused !== undefined) {
      const refused = whyRefused(mel, situation).map(({ defect, row, because }) => {
        const sets = because.map(({ conditions, openItems }) => [...conditions.map(({ id }) => id), ...openItems]);
        return { defect, row, because: inOrder(sets) };
      });
      expect(refused).toEqual(one.refused.map((row) => ({ ...row, because: inOrder(row.because) })));
    }
  });
});
