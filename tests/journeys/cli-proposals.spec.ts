/**
 * The published verdicts and stories that need more than the recorded rows, asked as an outsider would: which rows would
 * do, what is the least to fix, which smallest sets refuse a row.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import type { QuestionPlan, Verdict, WhatHelps } from '#dispatch';
import { run } from '../../apps/cli/src/run.js';
import { scratchFolder } from './cli-scratch.js';

interface ProposalCase {
  id: string;
  mel: string;
  source: string;
  mark: string;
  expect: string;
  rows?: Record<string, string>;
  repairs?: string[][];
  refused?: { defect: string; row: string; because: string[][] }[];
  asks?: string[];
  defects: object[];
  [part: string]: unknown;
}

const TOLD = new Set('id mel source mark basis expect rows changes repairs refused asks says'.split(' '));
const casesFolder = new URL('../cases/', import.meta.url);
const { defaults, cases } = parse(readFileSync(new URL('proposals.yaml', casesFolder), 'utf8'), { merge: true }) as {
  defaults: { recordedAt: string; [part: string]: unknown };
  cases: ProposalCase[];
};
const { file } = scratchFolder();

function lineOf(one: ProposalCase): string[] {
  const { recordedAt, ...rest } = defaults;
  const given = Object.entries(one).filter(([part]) => !TOLD.has(part));
  const defects = one.defects.map((defect) => ({ recordedAt, ...defect }));
  const path = file(`${one.id}.yaml`, stringify({ ...rest, ...Object.fromEntries(given), defects }));
  return ['judge', '--mel', fileURLToPath(new URL(`published-rows-${one.mel}.yaml`, casesFolder)), '--case', path];
}

const inOrder = (sets: readonly string[][]): string[][] => sets.map((set) => [...set].sort()).sort();

describe('the published verdicts that need a proposal, through the command', () => {
  it.each(cases.map((one) => [`${one.id} (${one.source}; ${one.mark})`, one] as const))('%s', async (_name, one) => {
    const { stdout, stderr, code } = await run([...lineOf(one), '--json']);
    expect({ stderr, code }).toEqual({ stderr: '', code: 0 });
    const told = JSON.parse(stdout) as Verdict & WhatHelps & { questionPlan: QuestionPlan };
    expect(told.betterRows?.answer.verdict ?? told.verdict).toBe(one.expect);
    if (told.betterRows !== null) {
      const proposed = Object.fromEntries(told.betterRows.rows.map(({ defect, row }) => [defect, row]));
      expect(proposed).toMatchObject(one.rows ?? {});
    }
    if (one.repairs !== undefined && one.repairs.length > 0) {
      expect(told.leastToFix?.repairs.map(({ defects }) => defects)).toEqual(one.repairs);
    }
    if (one.refused !== undefined) {
      const refused = told.whyRefused.map(({ defect, row, because }) => {
        const sets = because.map(({ conditions, openItems }) => [...conditions.map(({ id }) => id), ...openItems]);
        return { defect, row, because: inOrder(sets) };
      });
      expect(refused).toEqual(one.refused.map((row) => ({ ...row, because: inOrder(row.because) })));
    }
  });

  const named = (id: string): ProposalCase => cases.find((one) => one.id === id)!;

  it('are said in words: the least to fix, and what refuses a row while what is open', async () => {
    const { stdout } = await run(lineOf(named('V-01')));
    expect(stdout).toContain('Least to fix\n  - Main wheel brake 2 (brake): nobody has said how long it takes\n');
    expect(stdout).toContain('"Both reversers are normal", while Reverser 1 (reverser) is open');
  });

  it('are said in words: which row would do instead', async () => {
    const { stdout } = await run(lineOf(named('V-33')));
    expect(stdout).toContain('MAY NOT FLY: Q-ABC');
    expect(stdout).toContain('Other rows would do: may fly after work');
    expect(stdout).toContain('  - Change Windscreen wipers L (wiper) from row A to row B, and sign it with its work');
  });

  it('are said in words: what to ask, and in which order', async () => {
    const { stdout } = await run(lineOf(named('story 2, the second one fails')));
    expect(stdout).toMatch(/^Ask in this order; \d\.\d questions expected\n {2}1\. /m);
  });
});
