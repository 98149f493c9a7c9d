import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { projectRoot } from './scratch.js';

describe('the closing line of a run', () => {
  let folder: string;
  beforeEach(() => (folder = mkdtempSync(join(tmpdir(), 'proviso-tally-'))));
  afterEach(() => rmSync(folder, { recursive: true }));

  const tests = (...statuses: string[]) => statuses.map((status, i) => ({ status, fullName: `test ${i}` }));
  const file = (name: string, status: string, ...statuses: string[]) => ({
    name: join(folder, name),
    status,
    message: status === 'failed' ? 'cannot be read\nat line 1' : '',
    assertionResults: tests(...statuses),
  });

  /** Runs the tally beside a report of these files; gives its exit code and its lines. */
  function tally(steps: string[], files?: ReturnType<typeof file>[], success = true) {
    if (files) {
      const all = files.flatMap((one) => one.assertionResults);
      const report = {
        success,
        numTotalTests: all.length,
        numPassedTests: all.filter(({ status }) => status === 'passed').length,
        testResults: files,
      };
      mkdirSync(join(folder, '.test-output'));
      writeFileSync(join(folder, '.test-output/report.json'), JSON.stringify(report));
    }
    const run = spawnSync(process.execPath, [join(projectRoot, '.ci/tally.mjs'), ...steps], {
      cwd: folder,
      encoding: 'utf8',
    });
    return { code: run.status, lines: run.stdout.trim().split('\n') };
  }

  it('counts what passed, and exits with 0 when nothing failed', () => {
    const { code, lines } = tally(
      [],
      [file('a.spec.ts', 'passed', 'passed', 'passed'), file('b.spec.ts', 'passed', 'passed')],
    );
    expect([code, lines]).toEqual([0, ['3 passed, 0 failed']]);
  });

  it('names each test that failed, and exits with 1', () => {
    const { code, lines } = tally(['test'], [file('a.spec.ts', 'failed', 'passed', 'failed')], false);
    expect(code).toBe(1);
    expect(lines).toContain('  failed a.spec.ts > test 1');
    expect(lines.at(-1)).toBe('1 passed, 1 failed');
  });

  it('counts a test that did not run as failed', () => {
    const { code, lines } = tally([], [file('a.spec.ts', 'passed', 'passed', 'skipped')]);
    expect([code, lines.at(-1)]).toEqual([1, '1 passed, 1 failed']);
  });

  it('counts a test file that could not be read as failed', () => {
    const { code, lines } = tally(
      ['test'],
      [file('a.spec.ts', 'passed', 'passed'), file('b.spec.ts', 'failed')],
      false,
    );
    expect(code).toBe(1);
    expect(lines).toContain('  failed b.spec.ts: cannot be read');
    expect(lines.at(-1)).toBe('1 passed, 1 failed');
  });

  it('counts another step that failed, though every test passed', () => {
    const { code, lines } = tally(['types'], [file('a.spec.ts', 'passed', 'passed')]);
    expect(code).toBe(1);
    expect(lines).toContain('  step types');
    expect(lines.at(-1)).toBe('1 passed, 1 failed');
  });

  it('counts a test run that failed though each of its tests passed', () => {
    expect(tally(['test'], [file('a.spec.ts', 'passed', 'passed')]).lines.at(-1)).toBe('1 passed, 1 failed');
  });

  it('does not take a run that left no report, or a report of no tests, for a good one', () => {
    expect(tally([]).lines.at(-1)).toBe('0 passed, 1 failed');
    expect(tally(['install']).lines.at(-1)).toBe('0 passed, 1 failed');
    expect(tally([], []).lines.at(-1)).toBe('0 passed, 1 failed');
  });
});
