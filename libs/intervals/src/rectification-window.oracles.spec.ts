/**
 * Random (zone, instant, interval) against two libraries that carry time-zone data of their own. Where they differ, the
 * UTC offsets at the boundary must differ too: then it is the data, not the arithmetic. The zones where the data differs
 * are found by walking the clock changes of all three, and for the versions known here they are listed with the reason.
 */
import { Instant, LocalDate, ZoneId } from '@js-joda/core';
import '@js-joda/timezone';
import fc from 'fast-check';
import moment from 'moment-timezone';
import { Temporal } from 'temporal-polyfill';
import { beforeAll, describe, expect, it } from 'vitest';
import { rectificationWindow, type CalendarClock } from './index.js';

const DAY = 86_400_000;
const FROM = Date.UTC(1980, 0, 2);
/** The last clock changes that moment-timezone carries are those of 2037. */
const UNTIL = Date.UTC(2036, 11, 1);

interface Oracle {
  name: string;
  /** How many random records are held against it. */
  runs: number;
  zones: ReadonlySet<string>;
  dayOf: (zone: string, at: number) => string;
  startOfDay: (zone: string, day: string) => number;
  offsetMinutes: (zone: string, at: number) => number;
}

const zoneIds = new Map<string, ZoneId>();
const zoneOf = (zone: string): ZoneId => {
  const known = zoneIds.get(zone) ?? ZoneId.of(zone);
  zoneIds.set(zone, known);
  return known;
};

const joda: Oracle = {
  name: 'js-joda',
  runs: 100_000,
  zones: new Set(ZoneId.getAvailableZoneIds()),
  dayOf: (zone, at) => Instant.ofEpochMilli(at).atZone(zoneOf(zone)).toLocalDate().toString(),
  startOfDay: (zone, day) => LocalDate.parse(day).atStartOfDay(zoneOf(zone)).toInstant().toEpochMilli(),
  offsetMinutes: (zone, at) => zoneOf(zone).rules().offset(Instant.ofEpochMilli(at)).totalSeconds() / 60,
};

const momentTz: Oracle = {
  name: 'moment-timezone',
  runs: 4000,
  zones: new Set(moment.tz.names()),
  dayOf: (zone, at) => moment.tz(at, zone).format('YYYY-MM-DD'),
  startOfDay: (zone, day) => moment.tz(day, zone).valueOf(),
  offsetMinutes: (zone, at) => -(moment.tz.zone(zone)?.utcOffset(at) ?? Number.NaN),
};

const oracles = [joda, momentTz];

/** Zones whose law changed between the data versions in use here (2025c in Node 20.20, 2026a in js-joda, 2026f in moment). */
const DATA_DIFFERS: Record<string, string> = {
  'Africa/Casablanca': 'from 20 Sep 2026 without the clock changes around Ramadan (newest data only)',
  'Africa/El_Aaiun': 'as Africa/Casablanca',
  'America/Bogota': 'the end of its clock change of 1992 lies a day apart between the versions',
  'America/Edmonton': 'from Nov 2026 without clock changes (newest data only)',
  'America/Havana': 'the clock changes of winter 2026 to 2027 (newest data only)',
  'America/Inuvik': 'as America/Edmonton',
  'America/Vancouver': 'from Nov 2026 without clock changes (newest data only)',
  'America/Winnipeg': 'from Nov 2026 without clock changes (newest data only)',
  'Europe/Chisinau': 'changes clocks an hour apart since 2022 between the versions',
};

const ourOffset = (zone: string, at: number): number =>
  Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(zone).offsetNanoseconds / 60e9;

const zones = Intl.supportedValuesOf('timeZone').filter((zone) => oracles.every((oracle) => oracle.zones.has(zone)));

/** Every clock change of a zone by the data of this machine: walked once, because that is slow. */
const walked = new Map<string, readonly number[]>();
function changesOf(zone: string): readonly number[] {
  const known = walked.get(zone);
  if (known) return known;
  const changes: number[] = [];
  for (let at = nextChange(zone, FROM); at !== null; at = nextChange(zone, at)) changes.push(at);
  walked.set(zone, changes);
  return changes;
}

/** The first clock change after `at` by the data of this machine, or null. */
function changeAfter(zone: string, at: number): number | null {
  return changesOf(zone).find((change) => change > at) ?? null;
}

function nextChange(zone: string, at: number): number | null {
  const next = Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(zone).getTimeZoneTransition('next');
  return next && next.epochMilliseconds < UNTIL ? next.epochMilliseconds : null;
}

/** Zones where an oracle's offset differs from ours on any side of any clock change of either, or each month between. */
function zonesWithOtherData(oracle: Oracle): string[] {
  return zones.filter((zone) => {
    const moments: number[] = [];
    for (let at = FROM; at < UNTIL; at += 30 * DAY) moments.push(at);
    for (const at of changesOf(zone)) moments.push(at - 1, at);
    for (const until of moment.tz.zone(zone)?.untils ?? []) {
      if (until > FROM && until < UNTIL) moments.push(until - 1, until);
    }
    const ours = offsetReader(zone);
    return moments.some((at) => ours(at) !== oracle.offsetMinutes(zone, at));
  });
}

/** Our offset by the list of clock changes: one look per change, not one per instant asked. */
function offsetReader(zone: string): (at: number) => number {
  const changes: { at: number; offset: number }[] = [{ at: FROM, offset: ourOffset(zone, FROM) }];
  for (const at of changesOf(zone)) changes.push({ at, offset: ourOffset(zone, at) });
  return (at) => changes.findLast((change) => change.at <= at)?.offset ?? Number.NaN;
}

interface Boundaries {
  dayOfDiscovery: string;
  startsAt: number;
  endsAt: number;
}

const isSame = (one: Boundaries, other: Boundaries): boolean =>
  one.dayOfDiscovery === other.dayOfDiscovery && one.startsAt === other.startsAt && one.endsAt === other.endsAt;

function byOracle(oracle: Oracle, zone: string, recordedAt: number, days: number): Boundaries {
  const dayOfDiscovery = oracle.dayOf(zone, recordedAt);
  const day = (after: number): string => LocalDate.parse(dayOfDiscovery).plusDays(after).toString();
  return {
    dayOfDiscovery,
    startsAt: oracle.startOfDay(zone, day(1)),
    endsAt: oracle.startOfDay(zone, day(days + 1)),
  };
}

const ourWindow = (zone: string, recordedAt: number, days: number): CalendarClock =>
  rectificationWindow({
    category: 'D',
    interval: `${days} calendar-days`,
    recordedAt: new Date(recordedAt).toISOString(),
    base: zone,
    tzdb: process.versions.tz ?? 'unknown',
  });

const boundariesOf = (clock: CalendarClock): Boundaries => ({
  dayOfDiscovery: clock.dayOfDiscovery,
  startsAt: Date.parse(clock.startsAt),
  endsAt: Date.parse(clock.endsAt),
});

/** Half the records fall anywhere; the other half so that the window begins or ends within two days of a clock change. */
const drawn = fc
  .record({
    zone: fc.constantFrom(...zones),
    anywhere: fc.integer({ min: FROM, max: UNTIL - 400 * DAY }),
    days: fc.oneof(fc.constantFrom(3, 10, 120), fc.integer({ min: 1, max: 120 })),
    near: fc.constantFrom('anywhere', 'begins near a change', 'ends near a change'),
    shift: fc.integer({ min: -2 * DAY, max: 2 * DAY }),
  })
  .map(({ zone, anywhere, days, near, shift }) => {
    const change = near === 'anywhere' ? null : changeAfter(zone, anywhere);
    const back = near === 'ends near a change' ? days * DAY : 0;
    const recordedAt = change === null ? anywhere : Math.max(FROM, change - back + shift);
    return { zone, days, recordedAt };
  });

describe.each(oracles)('against the zone data of $name', (oracle) => {
  let others: string[] = [];
  beforeAll(() => {
    others = zonesWithOtherData(oracle);
  });

  it('the window is the same, or the UTC offset at its boundary is not', () => {
    const explained = new Map<string, number>();
    let compared = 0;
    fc.assert(
      fc.property(drawn, ({ zone, days, recordedAt }) => {
        const ours = boundariesOf(ourWindow(zone, recordedAt, days));
        const theirs = byOracle(oracle, zone, recordedAt, days);
        compared += 1;
        if (isSame(ours, theirs)) return;
        const boundaries = [recordedAt, ours.startsAt, ours.endsAt, theirs.startsAt, theirs.endsAt];
        const dataDiffers = boundaries.some((at) => ourOffset(zone, at) !== oracle.offsetMinutes(zone, at));
        if (!dataDiffers) expect(ours).toEqual(theirs);
        explained.set(zone, (explained.get(zone) ?? 0) + 1);
      }),
      { numRuns: oracle.runs },
    );
    const count = [...explained.values()].reduce((total, one) => total + one, 0);
    expect(compared).toBeGreaterThanOrEqual(oracle.runs);
    expect([...explained.keys()].filter((zone) => !others.includes(zone))).toEqual([]);
    expect(count).toBeLessThan(oracle.runs * 0.02);
  });

  it('the zones whose data differs are the few whose law changed', () => {
    expect(zones.length).toBeGreaterThan(400);
    const unexpected = others.filter((zone) => !Object.hasOwn(DATA_DIFFERS, zone));
    if (process.versions.tz === '2025c') expect(unexpected).toEqual([]);
    expect(unexpected.length).toBeLessThan(10);
  });
});

it('names a zone where newer data moves a deadline, so that the version belongs to the result', () => {
  const clock = ourWindow('America/Vancouver', Date.UTC(2026, 9, 29, 18), 3);
  const theirs = byOracle(momentTz, 'America/Vancouver', Date.UTC(2026, 9, 29, 18), 3);
  const sameData =
    ourOffset('America/Vancouver', theirs.endsAt) === momentTz.offsetMinutes('America/Vancouver', theirs.endsAt);
  expect(clock.lastDay).toBe('2026-11-01');
  expect(new Date(theirs.endsAt).toISOString()).toBe('2026-11-02T07:00:00.000Z');
  expect(clock.endsAt).toBe(sameData ? '2026-11-02T07:00:00Z' : '2026-11-02T08:00:00Z');
  expect(clock.tzdb).toBe(process.versions.tz);
});
