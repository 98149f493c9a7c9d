/** The commands that read MEL files and movement messages. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { AgainstFinding, MelChange, MelCheck } from '#mel';
import type { ReadMovements } from '#movements';
import { run } from '../../apps/cli/src/run.js';
import { messagesOf } from './cli-movements.js';
import { scratchFolder } from './cli-scratch.js';

const { file } = scratchFolder();
const t1 = fileURLToPath(new URL('../cases/published-rows-t1.yaml', import.meta.url));
const text = readFileSync(t1, 'utf8');

async function answer<T>(...line: string[]): Promise<{ value: T; words: string; code: number }> {
  const asJson = await run([...line, '--json']);
  const asWords = await run(line);
  expect([asJson.stderr, asWords.stderr]).toEqual(['', '']);
  expect(asWords.code).toBe(asJson.code);
  return { value: JSON.parse(asJson.stdout) as T, words: asWords.stdout, code: asJson.code };
}

describe('mel check', () => {
  it('says what a good file holds, and which rows it holds only in part', async () => {
    const { value, words, code } = await answer<MelCheck>('mel', 'check', t1);
    expect(code).toBe(0);
    expect(value.findings).toEqual([]);
    expect(value.holds).toMatchObject({ revision: '32', aircraftType: 'T1' });
    expect(words).toContain(`${t1}: no findings.`);
    expect(words).toContain(`${value.holds?.entries} entries, ${value.holds?.rows} rows`);
    expect(value.holds?.incomplete).toContain('78-30-01/1');
    expect(words).toContain('78-30-01/1');
  });

  it('names file, entry, place and reason of every finding, and exits 1', async () => {
    const path = file('bad.yaml', text.replaceAll('numberRequired: 1', 'numberRequired: 9'));
    const { value, words, code } = await answer<MelCheck>('mel', 'check', path);
    expect(code).toBe(1);
    expect(value.holds).toBeNull();
    expect(value.findings[0]).toEqual({
      file: path,
      entry: '22-10-01',
      field: '/entries/0/subEntries/0/rows/0/numberRequired',
      reason: '9 required of 2 installed',
    });
    const lines = words.trim().split('\n');
    expect(lines).toHaveLength(value.findings.length + 1);
    expect(lines[0]).toBe(
      `${path}: entry 22-10-01: /entries/0/subEntries/0/rows/0/numberRequired: 9 required of 2 installed`,
    );
  });

  it('takes broken YAML for a finding, with its line', async () => {
    const { value, code } = await answer<MelCheck>('mel', 'check', file('broken.yaml', 'a: b\nc: [1\nd: 2\n'));
    expect(code).toBe(1);
    expect(value.findings[0]?.reason).toMatch(/at line 3/);
  });

  it('lets no terminal obey what a file is called', async () => {
    const { words } = await answer('mel', 'check', file('odd\u001b[31m\u009b.yaml', text));
    expect(words).toMatch(/odd \[31m .yaml: no findings/);
  });
});

interface Compared {
  old: { revision: string };
  new: { revision: string };
  changes: MelChange[];
}

describe('mel compare', () => {
  it('weighs each change of a later revision, and answers with exit 0', async () => {
    const later = file(
      'later.yaml',
      text.replace("revision: '32'", "revision: '33'").replace('numberRequired: 1', 'numberRequired: 0'),
    );
    const { value, words, code } = await answer<Compared>('mel', 'compare', t1, later);
    expect(code).toBe(0);
    expect([value.old.revision, value.new.revision]).toEqual(['32', '33']);
    expect(value.changes).toEqual([
      expect.objectContaining({ entry: '22-10-01', row: '1', what: 'changed', weighing: 'less-restrictive' }),
    ]);
    expect(words).toMatch(/revision 32, against .*revision 33: 1 change\.\n {2}22-10-01, row 1 \(all\), /);
    expect(words).toContain('less restrictive');
  });

  it('finds nothing between a file and itself', async () => {
    const { value, words } = await answer<Compared>('mel', 'compare', t1, t1);
    expect(value.changes).toEqual([]);
    expect(words).toMatch(/: 0 changes\.\n$/);
  });
});

describe('mel against', () => {
  it('names what is less restrictive than the master list, and answers with exit 0', async () => {
    const own = file('own.yaml', text.replace('numberRequired: 1', 'numberRequired: 0'));
    const { value, words, code } = await answer<{ findings: AgainstFinding[] }>('mel', 'against', t1, own);
    expect(code).toBe(0);
    expect(value.findings).toEqual([
      expect.objectContaining({ entry: '22-10-01', row: '1', kind: 'less-restrictive' }),
    ]);
    expect(words).toContain('22-10-01, row 1 (all), numberRequired: less restrictive than the MMEL');
  });

  it('says so when nothing is', async () => {
    const { value, words } = await answer<{ findings: AgainstFinding[] }>('mel', 'against', t1, t1);
    expect(value.findings).toEqual([]);
    expect(words).toContain('nowhere less restrictive');
  });
});

describe('movements read', () => {
  // D1, A1 and R1 of a published set of examples (IATA AHM 780; SEEN); airline and registration are dummies.
  const out = 'MVT\nZZ200/21.PMDFG.CDG\nAD1100/1115 EA1500 FRA\nDL72/0015\nPX112\nSI DEICING';
  const home = 'MVT\nZZ200/21.PMDFG.FRA\nAA1515/1520\nFLD21';
  const ramp = 'MVT\nZZ201/22.PMDFG.CDG\nAD1115 RR1125\nDL72/0015\nSI ABORTED TAKE-OFF';

  it('gives events, legs and counters in whole minutes', async () => {
    const path = file(
      'published.txt',
      `RECEIVED 2026-01-21T11:16Z\n${out}\nRECEIVED 2026-01-21T15:21Z\n${home}\n\nRECEIVED 2026-01-22T11:30Z\n${ramp}\n`,
    );
    const { value, words, code } = await answer<ReadMovements>('movements', 'read', path);
    expect(code).toBe(0);
    expect(value.legs[0]).toMatchObject({ from: 'CDG', to: 'FRA', blockMinutes: 260, flightMinutes: 240, cycles: 1 });
    expect(value.legs[1]).toMatchObject({ ending: 'ramp', blockMinutes: 10, flightMinutes: 0, cycles: 0 });
    expect(value.counters).toMatchObject({ flights: 1, flightDays: 1, cycles: 1, blockMinutes: 270 });
    expect(value.events.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['off-block', 'on-block']));
    expect(value.tray).toEqual([]);
    expect(words.split('\n')).toEqual([
      `${path}: 3 messages, 2 legs.`,
      '  PMDFG ZZ200 CDG to FRA, off blocks 21 Jan 2026 11:00 UTC, arrived: 4 h 20 min block, 4 h in the air',
      expect.stringMatching(
        /^ {2}PMDFG ZZ201 CDG .* returned to the ramp, not flown: 10 min block, 0 min in the air$/,
      ),
      'PMDFG: 1 flight, 1 flight-day (UTC), 1 cycle, 4 h in the air, 4 h 30 min block.',
      '',
    ]);
  });

  it('asks when messages were received where the file does not say, and takes it from the call', async () => {
    const path = file('undated.txt', out);
    const undated = await answer<ReadMovements>('movements', 'read', path);
    expect(undated.value).toMatchObject({ legs: [], tray: [{ reason: 'receipt' }] });
    expect(undated.words).toContain('--received');
    const dated = await answer<ReadMovements>('movements', 'read', path, '--received', '2026-01-21T11:16Z');
    expect(dated.value.legs).toHaveLength(1);
    expect(dated.words).toContain('under way');
  });

  it('shows what could not be used, with its line', async () => {
    const legs = messagesOf([{ off: '2026-01-27T07:00Z', minutes: 60 }]);
    const path = file('tray.txt', `${legs}\n\nNOT A MESSAGE`);
    const { value, words } = await answer<ReadMovements>('movements', 'read', path);
    expect(value.tray).toEqual([expect.objectContaining({ reason: 'no-message' })]);
    expect(words).toContain('Not used, for a person to look at:\n  line 10: "NOT A MESSAGE"');
  });
});

it('help lists every command with a line, and says what one takes', async () => {
  const list = await run([]);
  expect(list).toEqual(await run(['help']));
  expect(list).toEqual(await run(['--help']));
  expect(list.code).toBe(0);
  for (const name of ['judge', 'deadline', 'mel check', 'mel compare', 'mel against', 'movements read', 'migrate']) {
    expect(list.stdout).toMatch(new RegExp(`^  ${name} +[a-z"'].{10,}$`, 'm'));
  }
  const one = await run(['help', 'mel', 'check']);
  expect(one.stdout).toMatch(/^proviso mel check FILE \[--json\]\n/);
  expect(await run(['mel', 'check', '--help'])).toEqual(one);
});
