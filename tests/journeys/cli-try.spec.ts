/** A change that is tried on a case by the command: nothing but the answer differs, and the case file stays as it is. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import type { Verdict, WhatHelps } from '#dispatch';
import { run } from '../../apps/cli/src/run.js';
import { scratchFolder } from './cli-scratch.js';

const { file } = scratchFolder();
const mel = fileURLToPath(new URL('../cases/published-rows-t1.yaml', import.meta.url));

// Row P-56 of T1 (36-11-01: ETOPS to 120 minutes, no icing, flight level 310 or below), SEEN-Q.
const CASE = {
  at: '2026-03-10T06:00Z',
  aircraft: { registration: 'Q-ABC', type: 'T1', configuration: [], serial: 100 },
  flight: {
    id: 'F1',
    from: 'Northmere',
    to: 'Saltby',
    offBlockAt: '2026-03-10T08:00Z',
    facts: { 'flight.level': 350 },
  },
  facts: { 'flight.etopsMinutes': 0, 'flight.icing': 'none' },
  defects: [{ id: 'D1', entry: '36-11-01', unit: '1', row: '1', recordedAt: '2026-03-09T12:00Z' }],
  work: ['36-11-01/1/O1', '36-11-01/1/O2'],
};
const caseFile = file('case.yaml', stringify(CASE));

async function ask(change: object): Promise<Verdict & WhatHelps> {
  const line = ['judge', '--mel', mel, '--case', caseFile, '--try', file('try.yaml', stringify(change)), '--json'];
  const { stdout, stderr, code } = await run(line);
  expect({ stderr, code }).toEqual({ stderr: '', code: 0 });
  return JSON.parse(stdout) as Verdict & WhatHelps;
}

async function refused(change: unknown): Promise<string> {
  const line = ['judge', '--mel', mel, '--case', caseFile, '--try', file('try.yaml', stringify(change))];
  const { stdout, stderr, code } = await run(line);
  expect({ stdout, code }).toEqual({ stdout: '', code: 2 });
  return stderr;
}

describe('a change that is tried', () => {
  it('answers as the case would, if that were so, and leaves the case alone', async () => {
    const before = readFileSync(caseFile, 'utf8');
    expect((await ask({})).verdict).toBe('may-not-fly');
    expect((await ask({ fix: ['D1'] })).verdict).toBe('nothing-open');
    expect((await ask({ facts: [{ key: 'flight.level', value: 310 }] })).verdict).toBe('may-fly');
    const both = await ask({ broken: [{ entry: '36-11-01', units: ['2'] }] });
    expect(both.verdict).toBe('may-not-fly');
    expect(both.items.map(({ unit }) => unit).toSorted()).toEqual(['1', '2']);
    const late = await ask({ at: '2026-03-20T06:00Z', facts: [{ key: 'flight.level', value: 310 }] });
    expect(late.at).toBe('2026-03-20T06:00:00Z');
    const other = await ask({ fix: ['D1'], aircraft: { ...CASE.aircraft, registration: 'Q-ABD' } });
    expect(other.aircraft).toBe('Q-ABD');
    expect(readFileSync(caseFile, 'utf8')).toBe(before);
  });

  it('looks for the best row where none is named, and tries the named one alone', async () => {
    const fix = ['D1'];
    const rowOf = ({ items }: Verdict) => items.find(({ entry }) => entry === '22-10-01')?.row;
    const pilot = { entry: '22-10-01', units: ['1'] };
    const free = { entry: '36-11-01', units: ['1'] };
    expect(rowOf(await ask({ fix, broken: [pilot, free] }))).toBe('1');
    expect(rowOf(await ask({ fix, broken: [{ ...pilot, row: '2' }, free] }))).toBe('2');
  });

  it.each([
    ['/fix', 'there is no defect "D9" in the case', { fix: ['D9'] }],
    ['/more', 'is no part of a change', { more: 1 }],
    ['/broken/0/units', 'must be a list of units', { broken: [{ entry: '36-11-01' }] }],
    ['/facts/0', 'must have a key and a value', { facts: [{ key: 'flight.icing' }] }],
    ['', 'a change is made of', ['fix']],
    ['/facts/flight.icing', 'flight.icing', { facts: [{ key: 'flight.icing', value: 'hail' }] }],
  ])('is refused in one line where it cannot be: %s', async (place, reason, change) => {
    const said = await refused(change);
    expect(said).toContain('try.yaml');
    expect(said).toContain(place);
    expect(said).toContain(reason);
    expect(said.trim().split('\n')).toHaveLength(1);
  });
});
