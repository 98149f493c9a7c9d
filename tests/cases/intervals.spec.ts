import { readFileSync } from 'node:fs';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import {
  countingSettings,
  countUsed,
  extend,
  mayDepart,
  PRESETS,
  rectificationWindow,
  whatIsLeft,
  type CountedUse,
  type CountingSettings,
  type ExtensionInput,
  type Leg,
  type PresetName,
  type RectificationClock,
  type Used,
  type WindowInput,
} from '#intervals';

const tzdb = process.versions.tz ?? 'unknown';
const read = <T>(file: string): T[] => parse(readFileSync(new URL(file, import.meta.url), 'utf8')) as T[];

interface Sourced {
  id: string;
  what: string;
  source: string;
  mark: string;
  clock: Omit<WindowInput, 'tzdb'>;
}

/** A leg in short: off blocks, minutes in the air; block minutes default to ten more, cycles to one. */
interface ShortLeg {
  off: string;
  airborne?: string;
  landed?: string;
  minutes: number;
  block?: number;
  cycles?: number;
  from?: string;
}

interface Asked extends ShortLeg {
  used?: Used;
  answer: string;
  because?: string;
}

interface IntervalCase extends Sourced {
  settings?: Partial<CountingSettings>;
  window?: Partial<RectificationClock>;
  explained?: string[];
  legs?: ShortLeg[];
  flights?: Asked[];
  ask?: Asked[];
  used?: Partial<CountedUse>;
  left?: { at: string; isOver?: boolean; minutesLeft?: number; lastDay?: string; endsAt?: string }[];
}

interface ExtensionCase extends Sourced {
  presets?: PresetName[];
  extend: Omit<ExtensionInput, 'window' | 'preset'> & { preset?: PresetName };
  expect: object;
}

const cases = read<IntervalCase>('intervals.yaml');
const extensions = read<ExtensionCase>('intervals.extensions.yaml');
const zones = read<{ zone: string; day: string; trap: string; startsAt: string }>('intervals.zones.yaml');

const title = ({ id, what, source, mark }: Sourced): string => `${id}: ${what} (${mark}; ${source})`;

const legOf = ({ off, airborne, landed, minutes, block, cycles = 1, from }: ShortLeg): Leg => ({
  offBlockAt: off,
  from: from ?? null,
  ...(airborne === undefined ? {} : { airborneAt: airborne }),
  ...(landed === undefined ? {} : { landedAt: landed }),
  blockMinutes: block ?? minutes + 10,
  flightMinutes: minutes,
  cycles,
  landings: cycles,
});

const planOf = ({ off, minutes, block, from }: ShortLeg) => ({
  offBlockAt: off,
  ...(from === undefined ? {} : { from }),
  flightMinutes: minutes,
  blockMinutes: block ?? minutes + 10,
});

/** Asks each flight in order; the ones that may depart are flown and count for the next. */
function flyWhatMay(one: IntervalCase, clock: RectificationClock, legs: Leg[]): void {
  const settings = countingSettings(one.clock.preset, one.settings);
  for (const flight of one.flights ?? []) {
    const answer = mayDepart(clock, planOf(flight), countUsed(clock, legs, settings), settings);
    expect(answer, flight.off).toMatchObject({ answer: flight.answer });
    expect(answer.because).toContain(flight.because ?? '');
    if (answer.answer === 'holds') legs.push(legOf(flight));
  }
}

describe('the published rows of rectification intervals', () => {
  it.each(cases.map((one) => [title(one), one] as const))('%s', (_, one) => {
    const settings = countingSettings(one.clock.preset, one.settings);
    const clock = rectificationWindow({ ...one.clock, tzdb });
    const legs = (one.legs ?? []).map(legOf);
    expect(clock).toMatchObject(one.window ?? {});
    for (const words of one.explained ?? []) expect(clock.explanation).toContain(words);
    flyWhatMay(one, clock, legs);
    expect(countUsed(clock, legs, settings)).toMatchObject(one.used ?? {});
    for (const asked of one.ask ?? []) {
      const used = asked.used ?? countUsed(clock, legs, settings);
      const answer = mayDepart(clock, planOf(asked), used, settings);
      expect(answer).toMatchObject({ answer: asked.answer });
      expect(answer.because).toContain(asked.because ?? '');
    }
    for (const { at, minutesLeft, ...rest } of one.left ?? []) {
      const left = whatIsLeft(clock, at, countUsed(clock, legs, { ...settings, at }), settings);
      expect(left).toMatchObject(rest);
      if (minutesLeft !== undefined) expect(left.limits[0]).toMatchObject({ minutesLeft });
    }
  });
});

describe('the published rows of extensions', () => {
  const asked = extensions.flatMap((one) =>
    (one.presets ?? [one.extend.preset ?? 'easa']).map((preset) => [title(one), preset, one] as const),
  );

  it.each(asked)('%s, under %s', (_, preset, one) => {
    const window = rectificationWindow({ ...one.clock, tzdb });
    const answer = extend({ ...one.extend, preset, window });
    expect(answer).toMatchObject(one.expect);
    expect('refused' in answer).toBe('refused' in one.expect);
    expect(answer.paragraph).toBe(PRESETS[preset].extension.paragraph);
  });
});

describe('the first instant of a local day', () => {
  it.each(zones.map((one) => [one.zone, one.day, one.trap, one.startsAt] as const))(
    '%s %s: %s, it begins at %s',
    (zone, day, _, startsAt) => {
      const date = Temporal.PlainDate.from(day);
      if (zone === 'America/Coyhaique' && tzdb < '2025b') {
        const tooEarly = { category: 'B', recordedAt: `${day}T12:00`, base: zone, tzdb } as const;
        return expect(() => rectificationWindow(tooEarly)).toThrow('nor the name of a time zone');
      }
      const first = rectificationWindow({
        category: 'B',
        recordedAt: `${date.subtract({ days: 1 }).toString()}T12:00`,
        base: zone,
        tzdb,
      });
      expect(first).toMatchObject({ firstDay: day, startsAt, tzdb });
      const last = rectificationWindow({
        category: 'C',
        recordedAt: `${date.subtract({ days: 11 }).toString()}T12:00`,
        base: zone,
        tzdb,
      });
      expect(last.endsAt).toBe(startsAt);
    },
  );
});

it('every case names its source and a known mark', () => {
  for (const { id, source, mark } of [...cases, ...extensions]) {
    expect(source.length, id).toBeGreaterThan(5);
    expect(mark, id).toMatch(/^(SEEN|SEEN-Q|SEEN-2|DERIVED|FROM MEMORY|doc)\b/);
  }
  expect(cases.length).toBeGreaterThan(30);
  expect(extensions.length).toBeGreaterThan(20);
});
