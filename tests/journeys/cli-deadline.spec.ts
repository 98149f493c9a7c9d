/** Every worked case of intervals that `proviso deadline` can be asked, asked through its command line. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { run } from '../../apps/cli/src/run.js';
import { messagesOf, type ShortLeg } from './cli-movements.js';
import { scratchFolder } from './cli-scratch.js';

interface Clock {
  category: string;
  interval?: string;
  recordedAt: string;
  base: string;
  preset?: string;
  deferredAt?: string;
}

interface Asked extends ShortLeg {
  answer: string;
  because?: string;
  used?: Record<string, unknown>;
}

interface IntervalCase {
  id: string;
  what: string;
  mark: string;
  clock: Clock;
  window?: Record<string, unknown>;
  explained?: string[];
  legs?: ShortLeg[];
  settings?: Record<string, unknown>;
  flights?: Asked[];
  ask?: Asked[];
  used?: object;
  left?: { at: string; minutesLeft?: number; isOver?: boolean; lastDay?: string; endsAt?: string }[];
}

interface ExtensionCase {
  id: string;
  what: string;
  mark: string;
  presets?: string[];
  clock: Clock;
  extend: { preset?: string; grantedAt: string; [more: string]: unknown };
  expect: { refused?: string };
}

interface Answer {
  explanation: string;
  remaining?: { used?: object; limits: { minutesLeft: number | null }[]; movements?: object };
  departure?: { answer: string; because: string };
  extension?: object;
  [key: string]: unknown;
}

const { file } = scratchFolder();
const read = <T>(name: string): T[] =>
  parse(readFileSync(new URL(`../cases/${name}`, import.meta.url), 'utf8')) as T[];

/** The line that a person would type for this clock. */
const lineOf = ({ category, interval, recordedAt, base, preset, deferredAt }: Clock): string[] => [
  'deadline',
  `--category=${category}`,
  `--recorded=${recordedAt}`,
  `--base=${base}`,
  ...(interval === undefined ? [] : ['--interval', interval]),
  ...(preset === undefined ? [] : ['--preset', preset]),
  ...(deferredAt === undefined ? [] : ['--deferred', deferredAt]),
];

/** `hourClock=block; bases=QVR,QHT`, as --settings and --used take it. */
const pairs = (option: string, values: Record<string, unknown> | undefined): string[] =>
  values === undefined
    ? []
    : [
        option,
        Object.entries(values)
          .map(([name, value]) => `${name}=${String(value)}`)
          .join('; '),
      ];

const NOTHING_USED = {
  flights: 0,
  flightDays: 0,
  flightMinutes: 0,
  blockMinutes: 0,
  cycles: 0,
  designatedDepartures: 0,
};

const flightOf = ({ off, minutes, block = minutes + 10, from }: ShortLeg): string[] => [
  `--depart=${off}`,
  `--minutes=${minutes}`,
  `--block-minutes=${block}`,
  ...(from === undefined ? [] : ['--from', from]),
];

async function ask(...line: string[]): Promise<Answer> {
  const { stdout, stderr, code } = await run([...line, '--json']);
  expect({ stderr, code }).toEqual({ stderr: '', code: 0 });
  return JSON.parse(stdout) as Answer;
}

const KEYS = ['firstDay', 'lastDay', 'startsAt', 'endsAt', 'lengthHours', 'base', 'tzdb'];
const cases = read<IntervalCase>('intervals.yaml');

describe('the published rows of rectification intervals, through the command', () => {
  it.each(cases)('$id: $what ($mark)', async (one) => {
    const answer = await ask(...lineOf(one.clock));
    expect(Object.keys(answer)).toEqual([...KEYS, 'explanation']);
    expect(answer).toMatchObject(only(one.window ?? {}, KEYS));
    expect(answer['tzdb']).toBe(process.versions.tz);
    for (const words of one.explained ?? []) expect(answer.explanation).toContain(words);
    const flown = [...(one.legs ?? []), ...(one.flights ?? []).filter((flight) => flight.answer === 'holds')];
    const movements = flown.length === 0 ? [] : ['--movements', file(`${one.id}.txt`, messagesOf(flown))];
    if (one.used) {
      const { remaining } = await ask(...lineOf(one.clock), ...movements);
      expect(remaining?.used).toMatchObject(one.used);
      expect(remaining?.movements).toEqual({
        registration: 'QABX',
        legs: flown.length,
        incomplete: 0,
        notUsed: [],
      });
    }
    for (const { at, minutesLeft, ...rest } of one.left ?? []) {
      const { remaining } = await ask(
        ...lineOf(one.clock),
        ...movements,
        ...pairs('--settings', one.settings),
        '--at',
        at,
      );
      expect(remaining).toMatchObject(rest);
      if (minutesLeft !== undefined) expect(remaining?.limits[0]).toMatchObject({ minutesLeft });
    }
  });
});

describe('the flights of the published rows, through the command', () => {
  const withFlights = cases.filter(({ flights, ask: asked }) => flights ?? asked);

  it.each(withFlights)('$id: $what ($mark)', async (one) => {
    const flown = [...(one.legs ?? [])];
    const put = async (flight: Asked): Promise<void> => {
      const given = flight.used ?? (flown.length === 0 ? NOTHING_USED : undefined);
      const use = given ? pairs('--used', given) : ['--movements', file(`${one.id}.txt`, messagesOf(flown))];
      const answer = await ask(
        ...lineOf(one.clock),
        ...pairs('--settings', one.settings),
        ...use,
        ...flightOf(flight),
      );
      expect(answer.departure, flight.off).toMatchObject({ answer: flight.answer });
      expect(answer.departure?.because).toContain(flight.because ?? '');
    };
    for (const flight of one.flights ?? []) {
      await put(flight);
      if (flight.answer === 'holds') flown.push(flight);
    }
    for (const flight of one.ask ?? []) await put(flight);
  });
});

/** What the command takes beside the instant of the grant. */
const extensionOf = (extend: ExtensionCase['extend']): string[] => {
  const { alreadyExtended, procedureHeld, authorityAgreement, days, holidays } = extend;
  return [
    `--extend-at=${extend.grantedAt}`,
    `--extended=${String(alreadyExtended)}`,
    ...(procedureHeld === true ? [] : ['--procedure', 'none']),
    ...(authorityAgreement === undefined ? [] : ['--agreement', String(authorityAgreement)]),
    ...(days === undefined ? [] : ['--extend-days', String(days)]),
    ...(Array.isArray(holidays) ? ['--holidays', holidays.join(',')] : []),
  ];
};

describe('the published rows of extensions, through the command', () => {
  const asked = read<ExtensionCase>('intervals.extensions.yaml').flatMap((one) =>
    (one.presets ?? [one.extend.preset ?? 'easa']).map((preset) => ({ ...one, preset })),
  );

  it.each(asked)('$id under $preset: $what ($mark)', async ({ clock, extend, preset, expect: expected }) => {
    const answer = await ask(...lineOf({ ...clock, preset }), ...extensionOf(extend));
    expect(answer.extension).toMatchObject(expected);
    expect(Object.hasOwn(answer.extension ?? {}, 'refused')).toBe(expected.refused !== undefined);
    expect(answer.extension).not.toHaveProperty('window');
  });
});

describe('the first instant of a local day, through the command', () => {
  const zones = read<{ zone: string; day: string; trap: string; startsAt: string }>('intervals.zones.yaml').filter(
    ({ zone }) => isKnown(zone),
  );

  it.each(zones)('$zone $day: $trap', async ({ zone, day, startsAt }) => {
    const before = new Date(Date.parse(`${day}T12:00Z`) - 86_400_000).toISOString().slice(0, 10);
    const answer = await ask(...lineOf({ category: 'B', recordedAt: `${before}T12:00`, base: zone }));
    expect(answer).toMatchObject({ firstDay: day, startsAt });
  });
});

describe('what is left', () => {
  const line = lineOf({ category: 'B', recordedAt: '2026-01-26T10:00', base: 'UTC' });

  it('follows an extension from the moment it is granted, not before', async () => {
    const granted = [...line, '--extend-at', '2026-01-28T10:00Z', '--at'];
    const [before, after] = [await ask(...granted, '2026-01-28T09:00Z'), await ask(...granted, '2026-01-28T10:00Z')];
    expect(before.remaining).toMatchObject({ lastDay: '2026-01-29' });
    expect(after.remaining).toMatchObject({ lastDay: '2026-02-01' });
    expect(after).toMatchObject({ lastDay: '2026-01-29' });
  });

  it('is counted to the last movement where no instant is given', async () => {
    const legs = [{ off: '2026-01-27T07:00Z', minutes: 60 }];
    const answer = await ask(...line, '--movements', file('last.txt', messagesOf(legs)));
    expect(answer.remaining).toMatchObject({ at: '2026-01-27T08:10:00Z', used: { flights: 1 } });
  });

  it('leaves out legs that began after the instant', async () => {
    const legs = [
      { off: '2026-01-27T07:00Z', minutes: 60 },
      { off: '2026-01-27T12:00Z', minutes: 60 },
    ];
    const counted = [...line, '--movements', file('two.txt', messagesOf(legs)), '--at', '2026-01-27T11:00Z'];
    expect((await ask(...counted)).remaining).toMatchObject({ used: { flights: 1 } });
  });

  it('is nothing once the flights are flown, and no extension is offered', async () => {
    const flights = lineOf({ category: 'A', interval: '2 flights', recordedAt: '2026-01-26T10:00', base: 'UTC' });
    const legs = ['2026-01-26T12:00Z', '2026-01-27T07:00Z'].map((off) => ({ off, minutes: 60 }));
    const answer = await ask(
      ...flights,
      `--movements=${file('used.txt', messagesOf(legs))}`,
      '--extend-at=2026-01-27T09:00Z',
    );
    expect(answer).toMatchObject({ remaining: { isOver: true }, extension: { refused: 'category-a' } });
  });

  it('is not known without movements where it is counted from use', async () => {
    const flights = lineOf({ category: 'A', interval: '3 flights', recordedAt: '2026-01-26T10:00', base: 'UTC' });
    const answer = await ask(...flights, '--at', '2026-01-27T11:00Z');
    expect(answer).toMatchObject({ lastDay: null, endsAt: null, remaining: { isOver: null } });
  });

  it('names what stands in the file of movements and could not be counted', async () => {
    const legs = messagesOf([{ off: '2026-01-27T07:00Z', minutes: 60 }]);
    const odd = file('odd.txt', `${legs}\n\nMVT\nZZ700/27.QABX.AAA\nAD1290/1300`);
    const answer = await ask(...line, '--movements', odd);
    expect(answer.remaining?.movements).toMatchObject({ legs: 1, notUsed: [{ line: 12, reason: 'element' }] });
    const { stdout } = await run([...line, '--movements', odd]);
    expect(stdout).toContain('Not counted, so more may have been used:\n  line 12: ');
  });
});

it('a deadline reads aloud', async () => {
  const line = lineOf({ category: 'B', recordedAt: '2026-01-26T21:30', base: 'America/New_York' });
  const { stdout } = await run([...line, '--at=2026-01-28T12:00Z', '--extend-at=2026-01-28T12:00Z', '--preset=faa']);
  expect(stdout.split('\n')).toEqual([
    'Category B, 3 calendar days: to be rectified by the end of 29 Jan 2026 (days of America/New_York), that is before 30 Jan 2026 05:00 UTC.',
    'Rectify as soon as practicable; this is the latest, not the plan.',
    expect.stringMatching(
      /^How it is counted: recorded 26 Jan 2026 21:30 local in America\/New_York, day excluded, /,
    ),
    'From 27 Jan 2026 05:00 UTC to 30 Jan 2026 05:00 UTC: 72 h.',
    'Left at 28 Jan 2026 12:00 UTC: 5 of 6 calendar days left, until 1 Feb 2026 23:59 local (113 h).',
    expect.stringMatching(
      /^Extension possible to the end of 1 Feb 2026, that is before 2 Feb 2026 05:00 UTC: .* told by 29 Jan 2026 12:00 UTC\. /,
    ),
    `Time-zone data ${process.versions.tz}.`,
    '',
  ]);
});

/** A zone younger than this machine's zone data has no days to ask for. */
function isKnown(timeZone: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone }).formatToParts().length > 0;
  } catch {
    return false;
  }
}

function only(from: Record<string, unknown>, keys: readonly string[]): Record<string, unknown> {
  return Object.fromEntries(Object.entries(from).filter(([key]) => keys.includes(key)));
}
