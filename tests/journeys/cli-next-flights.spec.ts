/** A day's flights, asked as an outsider would: a MEL file and a case file on the command line. */
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import type { NextFlights } from '#dispatch';
import { run } from '../../apps/cli/src/run.js';
import { caseFileOf, DAYS, expectedOf, type DayCase } from '../cases/next-flights.days.js';
import { scratchFolder } from './cli-scratch.js';

const { file } = scratchFolder();

function lineOf(one: DayCase, change: object = {}): string[] {
  const mel = fileURLToPath(new URL(`../cases/published-rows-${one.mel}.yaml`, import.meta.url));
  return ['judge', '--mel', mel, '--case', file(`${one.id}.yaml`, stringify({ ...caseFileOf(one), ...change }))];
}

const day = (id: string): DayCase => DAYS.find((one) => one.id === id)!;

describe('the flights of a day, through the command', () => {
  it.each(DAYS.map((one) => [`${one.id}: ${one.story}`, one] as const))('%s', async (_name, one) => {
    const { stdout, stderr, code } = await run([...lineOf(one), '--json']);
    expect({ stderr, code }).toEqual({ stderr: '', code: 0 });
    const { flights, kept } = JSON.parse(stdout) as NextFlights;
    const expected = expectedOf(one);
    const answers = flights.map(({ flight, verdict }) => [flight.id, verdict.verdict]);
    expect([answers.slice(0, expected.length), kept]).toEqual([expected, one.kept]);
  });

  it('are said in words: each flight, the first to break, and what would save it', async () => {
    const { stdout } = await run(lineOf(day('N-01')));
    for (const part of [
      'Q-ABM: 1 of 4 flights can be flown as planned',
      'F1 Northmere to Saltby, off blocks',
      'F3 Northmere to Saltby, off blocks 4 Mar 2026 13:20 UTC: may fly after work (if F2 is flown after all)',
      'First to break: F2 at Saltby.',
      'Fix Auxiliary power unit (APU) 1 at Northmere before F1.',
      'never replaces, the approved MEL',
    ]) {
      expect(stdout).toContain(part);
    }
  });

  const flights = (caseFileOf(day('N-05')) as { flights: { id: string }[] }).flights;
  it.each([
    ['give either "flight" or "flights"', { flight: flights[0] }],
    ['two of them are called "F1"', { flights: [flights[0], flights[0]] }],
    ['flight "F1" leaves before flight "F2"', { flights: [flights[1], flights[0]] }],
    ['two of them are called "Saltby"', { stations: Array(2).fill({ station: 'Saltby', maintenance: true }) }],
  ])('are refused in one line: %s', async (reason, change) => {
    const { stderr, code } = await run(lineOf(day('N-05'), change));
    expect(code).toBe(2);
    expect(stderr).toContain(reason);
  });
});
