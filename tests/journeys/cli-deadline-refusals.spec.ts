/** What `proviso deadline` refuses: one line that names the option, the value and the reason, and exit 2. */
import { describe, expect, it } from 'vitest';
import { run } from '../../apps/cli/src/run.js';
import { scratchFolder } from './cli-scratch.js';

const { file } = scratchFolder();
const A = ['deadline', '--category=A', '--recorded=2026-01-26T10:00', '--base=UTC'];
const flights = [...A, '--interval=4 flights'];

async function refusal(...line: string[]): Promise<string> {
  const { stdout, stderr, code } = await run(line);
  expect({ stdout, code }).toEqual({ stdout: '', code: 2 });
  expect(stderr).toMatch(/^proviso: [^\n]+\n$/);
  return stderr.slice('proviso: '.length, -1);
}

describe('an interval text that cannot be read', () => {
  it.each([
    ['3 moons', 'cannot be read: each part is a whole number from 1 to 9999'],
    ['3.5 flight-hours', 'cannot be read'],
    ['0 flights', 'cannot be read'],
    ['3 flights and 6 flight-hours', 'cannot be read'],
    ['3 flights or 5 flights', 'names flights twice'],
    ['3 flights, whichever is later', 'names only one'],
    ['3 flights, whichever suits', 'cannot be read from ", whichever suits" on'],
    ['3 flight-days, M1 within a day', 'cannot be read'],
    ['4 calendar-days, from the deferral', 'calendar days count from the day of discovery'],
    ['4 flights, time-limited dispatch', 'names no flight-hours or engine-hours'],
    ['departure from a station', 'or it is "next departure from a designated station"'],
    ['x'.repeat(300), 'is not a text of at most 200 characters'],
    ['4 flights\u0000', 'cannot be read'],
  ])('%j', async (interval, reason) => {
    const said = await refusal(...A, '--interval', interval);
    expect(said).toMatch(/^--interval "/);
    expect(said).toContain(reason);
  });
});

describe('a time that cannot be', () => {
  it.each([
    ['--recorded', '2026-02-30T10:00', 'names a day'],
    ['--recorded', '2026-01-26T25:00', 'names a day or an hour that does not exist'],
    ['--recorded', '2026-01-26', 'is not a date and time'],
    ['--deferred', '2026-02-29T10:00Z', 'names a day'],
    ['--deferred', '2026-01-26T11:00', 'neither Z nor an offset'],
    ['--deferred', '2026-01-26T09:59Z', 'is before the record of the defect'],
    ['--counts-from', '2026-04-31T10:00Z', 'names a day'],
    ['--at', '2027-02-29T00:00Z', 'names a day'],
    ['--depart', '2026-06-31T10:00Z', 'names a day'],
    ['--extend-at', '2026-11-31T10:00Z', 'names a day'],
  ])('%s %s', async (option, value, reason) => {
    const line = option === '--recorded' ? ['deadline', '--category=B', '--base=UTC'] : flights;
    const said = await refusal(...line, option, value);
    expect(said.startsWith(`${option} "${value}"`)).toBe(true);
    expect(said).toContain(reason);
  });

  it('names the day that a zone left out', async () => {
    const line = ['deadline', '--category=B', '--recorded=2011-12-30T10:00', '--base=Pacific/Apia'];
    expect(await refusal(...line)).toBe(
      '--recorded "2011-12-30T10:00" is on a day that did not exist in Pacific/Apia.',
    );
  });
});

describe('an option that is not whole', () => {
  it.each<[string, string[], RegExp]>([
    ['a setting that is none', ['--settings', 'colour=red'], /^--settings "colour=red": there are expiryInFlight, /],
    ['a setting without value', ['--settings', 'hourClock='], /^--settings "hourClock=" has no value after =$/],
    ['a setting twice', ['--settings', 'bases=QVR; bases=QHT'], /^--settings names bases twice$/],
    [
      'a value of no setting',
      ['--settings', 'hourClock=taxi'],
      /^--settings hourClock "taxi" is none of airborne, block$/,
    ],
    ['a fraction of use', ['--used', 'flights=1.5'], /^--used flights "1.5" is not a whole number from 0 up$/],
    ['a counter that is none', ['--used', 'moons=1'], /^--used "moons=1": there are flights, /],
    ['a flight without departure', ['--minutes', '60'], /^--minutes is of a flight, and --depart does not say/],
    [
      'an extension without grant',
      ['--extended', '1'],
      /^--extended is of an extension, and --extend-at does not say/,
    ],
    [
      'minutes that are none',
      ['--depart=2026-01-27T10:00Z', '--minutes=-5'],
      /^--minutes "-5" is not a whole number/,
    ],
    [
      'a holiday that is none',
      ['--extend-at=2026-01-27T10:00Z', '--holidays=2026-13-01'],
      /^--holidays "2026-13-01" is no day/,
    ],
    ['a counter that went back', ['--counts-from', '9 read 8 at 2026-01-26T10:00Z'], /^start\.reading "8" is before/],
    [
      'hours that are none',
      ['--counts-from', '9:75 read 10:00 at 2026-01-26T10:00Z'],
      /^--counts-from "9:75" is neither/,
    ],
  ])('%s', async (_what, more, expected) => {
    expect(await refusal(...flights, ...more)).toMatch(expected);
  });

  it('a file of movements without one is named with its place', async () => {
    const empty = file('none.txt', 'hello\n');
    expect(await refusal(...flights, '--movements', empty)).toMatch(/none\.txt: line 1: /);
  });
});

describe('an answer of a deadline', () => {
  it('tells use step by step, in words and as data', async () => {
    const mvt = [
      'RECEIVED 2026-01-27T09:00Z',
      'MVT',
      'ZZ1/27.QABX.AAA',
      'AD0700/0710',
      'RECEIVED 2026-01-27T09:00Z',
      'MVT',
      'ZZ1/27.QABX.BBB',
      'AA0810/0820',
    ];
    const line = [...flights, '--movements', file('one.txt', `${mvt.join('\n')}\n`)];
    const [words, data] = [await run(line), await run([...line, '--json'])];
    expect(words.stdout).toContain('Step by step:\n  27 Jan 2026 07:00 UTC: 1 of 4 flights\n');
    expect(JSON.parse(data.stdout)).toMatchObject({
      remaining: { steps: [{ offBlockAt: '2026-01-27T07:00:00Z', text: '27 Jan 2026 07:00 UTC: 1 of 4 flights' }] },
    });
  });

  it('counts from what a document states', async () => {
    const line = [...A, '--interval=50 flight-hours', '--counts-from', '74000:00 read 74020:30 at 2026-01-26T12:00Z'];
    const { stdout, code } = await run(line);
    expect({ code, stdout }).toMatchObject({ code: 0 });
    expect(stdout).toContain(
      'counted from 74000 h on the counter, which read 74020 h 30 min at 26 Jan 2026 12:00 UTC',
    );
  });

  it('says of a flight what decides', async () => {
    const { stdout } = await run([...flights, '--used', 'flights=4', '--depart', '2026-01-28T10:00Z']);
    expect(stdout).toContain('The flight may not leave: 4 of 4 flights are used up.');
    const unknown = await run([...flights, '--depart', '2026-01-28T10:00Z']);
    expect(unknown.stdout).toContain('Whether the flight may leave is not known: ');
  });

  it('counts the engine that is named', async () => {
    const line = [...A, '--interval', '125 engine-hours, time-limited dispatch', '--engine', '2'];
    const { stdout } = await run(line);
    expect(stdout).toContain('every minute of engine 2 from the start counts');
    expect(stdout).toContain('never extended by the operator');
  });
});
