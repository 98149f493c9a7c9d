/** The published verdicts, asked as an outsider would: a MEL file and a case file on the command line. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import type { Verdict } from '#dispatch';
import { run } from '../../apps/cli/src/run.js';
import { scratchFolder } from './cli-scratch.js';

interface VerdictCase {
  id: string;
  mel: string;
  expect: string;
  proposed?: string;
  says?: string[];
  asks?: string[];
  defects?: object[];
  [part: string]: unknown;
}

const { file } = scratchFolder();
const casesFolder = new URL('../cases/', import.meta.url);
const melFile = (name: string) => fileURLToPath(new URL(`published-rows-${name}.yaml`, casesFolder));
const { defaults, cases } = parse(readFileSync(new URL('verdicts.yaml', casesFolder), 'utf8'), { merge: true }) as {
  defaults: { recordedAt: string; [part: string]: unknown };
  cases: VerdictCase[];
};

const NO_PART_OF_A_CASE = ['id', 'mel', 'source', 'mark', 'basis', 'expect', 'proposed', 'says', 'asks', 'down'];

/** Writes a worked case as the file that a person would keep, and gives the line that asks about it. */
function lineOf(one: VerdictCase): string[] {
  const { recordedAt, ...rest } = defaults;
  const given = Object.entries(one).filter(([part]) => !NO_PART_OF_A_CASE.includes(part));
  const defects = (one.defects ?? []).map((defect) => ({ recordedAt, ...defect }));
  const path = file(`${one.id}.yaml`, stringify({ ...rest, ...Object.fromEntries(given), defects }));
  return ['judge', '--mel', melFile(one.mel), '--case', path];
}

describe('the published verdicts, through the command', () => {
  it.each(cases.map((one) => [one.id, one] as const))('%s', async (_id, one) => {
    const line = lineOf(one);
    const { stdout, stderr, code } = await run([...line, '--json']);
    expect({ stderr, code }).toEqual({ stderr: '', code: 0 });
    const verdict = JSON.parse(stdout) as Verdict;
    expect(verdict.verdict).toBe(one.proposed ?? one.expect);
    if (one.asks) expect(verdict.questions.map(({ fact }) => fact)).toEqual(one.asks);
    const said = JSON.stringify([verdict.reasons, verdict.refusedRows, verdict.questions, verdict.work]);
    for (const part of one.says ?? []) expect(said).toContain(JSON.stringify(part).slice(1, -1));
  });
});

/** Two cases of each verdict. */
const some = [...new Set(cases.map((one) => one.expect))].flatMap((code) =>
  cases.filter((one) => one.expect === code).slice(-2),
);

describe('a verdict in words', () => {
  it.each(some.map((one) => [one.id, one.expect, one] as const))(
    'leaves nothing out of %s, %s',
    async (_id, _code, one) => {
      const line = lineOf(one);
      const verdict = JSON.parse((await run([...line, '--json'])).stdout) as Verdict;
      const { stdout, code } = await run(line);
      expect(code).toBe(0);
      expect(stdout.startsWith(`${verdict.words.toUpperCase()}: ${verdict.aircraft}, `)).toBe(true);
      const wanted = [
        ...verdict.reasons,
        ...verdict.questions.flatMap(({ question, mayAnswer }) => [question, ...mayAnswer.slice(0, 1).map(spaced)]),
        ...verdict.work.map(({ by }) => `by ${spaced(by)}`),
        ...verdict.refusedRows.map(({ row, because }) => `row ${row}: ${because.join('; ')}`),
        ...verdict.notLookedAt,
        `revision ${verdict.mel?.revision}`,
        'never replaces, the approved MEL',
      ];
      for (const part of wanted) expect(stdout).toContain(part);
    },
  );
});

const spaced = (role: string): string => role.replaceAll('-', ' ');
