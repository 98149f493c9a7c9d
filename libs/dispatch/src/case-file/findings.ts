/** What the schema cannot say about a case: that everything it names exists, and that its times can be read. */
import { baseZone, readInstant, IntervalInputError, rectificationWindow } from '#intervals';
import { judgementsOf, misfitOf, readFactKey, worksOf, type Entry, type Finding, type Mel } from '#mel';
import type { PlannedFlight } from '../situation.js';
import type { CaseDefect, CaseFact, CaseFile } from './case-file.js';

type Path = Finding['path'];

const rowsOf = (entry: Entry) => entry.subEntries.flatMap((subEntry) => subEntry.rows);
const unitsOf = (entry: Entry) => [...new Set(entry.subEntries.flatMap((subEntry) => subEntry.units))];
const none = (names: readonly string[]) => (names.length === 0 ? 'none' : names.join(', '));
const MOST_NAMED = 60;

export function caseFindings(read: CaseFile, mel: Mel, tzdb: string): Finding[] {
  const { defects = [], work = [], judgements = [], directives = [], stations = [] } = read;
  return [
    ...baseFindings(read),
    ...times({ at: read.at }, []),
    ...flightsFindings(read, mel),
    ...factFindings(read.facts ?? {}, mel, ['facts']),
    ...defects.flatMap((defect, at) => defectFindings(defect, read, mel, tzdb, ['defects', at])),
    ...twice(
      defects.flatMap(({ id }) => id ?? []),
      'defects',
    ),
    ...twice(
      stations.flatMap(({ station, from, until }) => (from === undefined && until === undefined ? station : [])),
      'stations',
    ),
    ...stations.flatMap(({ from, until }, at) => times({ from, until }, ['stations', at])),
    ...work.flatMap((one, at) => workFindings(one, mel, ['work', at])),
    ...judgements.flatMap((one, at) => judgementFindings(one, mel, ['judgements', at])),
    ...directives.flatMap((one, at) => entryFindings(one.entry, one.units, mel, ['directives', at])),
  ];
}

function flightsFindings({ flight, flights = [] }: CaseFile, mel: Mel): Finding[] {
  const both = flight != null && flights.length > 0;
  return [
    ...(both ? [{ path: ['flights'], reason: 'give either "flight" or "flights"' }] : []),
    ...(flight == null ? [] : flightFindings(flight, mel, ['flight'])),
    ...flights.flatMap((one, at) => flightFindings(one, mel, ['flights', at])),
    ...twice(
      flights.map(({ id }) => id),
      'flights',
    ),
    ...outOfOrder(flights),
  ];
}

function flightFindings({ offBlockAt, onBlockAt, facts = {} }: PlannedFlight, mel: Mel, path: Path): Finding[] {
  return [...times({ offBlockAt, onBlockAt }, path), ...factFindings(facts, mel, [...path, 'facts'])];
}

/** A time that cannot be read is reported once, in its own place. */
function outOfOrder(flights: readonly PlannedFlight[]): Finding[] {
  return flights.flatMap(({ id, offBlockAt }, at) => {
    const before = flights[at - 1];
    const [earlier, later] = [before?.offBlockAt, offBlockAt].map(readOr);
    if (before === undefined || earlier == null || later == null || earlier <= later) return [];
    return [{ path: ['flights', at], reason: `flight "${id}" leaves before flight "${before.id}"` }];
  });
}

function readOr(instant: string | undefined): number | null {
  if (instant === undefined || times({ instant }, []).length > 0) return null;
  return readInstant('offBlockAt', instant).epochMilliseconds;
}

function baseFindings({ settings }: CaseFile): Finding[] {
  return attempt(['settings', 'base'], () => baseZone(settings?.base ?? 'UTC'));
}

/** Every field that is there must be an instant. */
function times(fields: Record<string, string | undefined>, path: Path): Finding[] {
  return Object.entries(fields).flatMap(([field, value]) =>
    value === undefined ? [] : attempt([...path, field], () => readInstant(field, value)),
  );
}

/** Every field that is there must be a day of the calendar: the schema has looked at its digits only. */
function days(fields: Record<string, string | null | undefined>, path: Path): Finding[] {
  return Object.entries(fields).flatMap(([field, value]) =>
    value == null || readOr(`${value}T12:00Z`) !== null
      ? []
      : [{ path: [...path, field], reason: `"${value}" is no day of the calendar` }],
  );
}

function attempt(path: Path, read: () => unknown): Finding[] {
  try {
    read();
    return [];
  } catch (error) {
    if (error instanceof IntervalInputError) return [{ path, reason: error.message }];
    throw error;
  }
}

function factFindings(facts: Record<string, CaseFact>, mel: Mel, path: Path): Finding[] {
  return Object.entries(facts).flatMap(([key, given]) => {
    const asked = readFactKey(key);
    const fact = asked?.fact;
    if (fact === undefined) return [{ path: [...path, key], reason: `there is no fact "${key}"` }];
    if (asked?.subject != null && mel.entry(asked.subject) === undefined) {
      return [{ path: [...path, key], reason: `there is no entry "${asked.subject}" to ask about` }];
    }
    if (fact.family !== 'flight') {
      return [
        { path: [...path, key], reason: `"${key}" is not given as a fact: it follows from the rest of the case` },
      ];
    }
    const known = typeof given === 'object' && given !== null ? given : { value: given };
    const misfit = known.value === null ? null : misfitOf(fact, known.value);
    return [
      ...(misfit === null ? [] : [{ path: [...path, key], reason: `for ${key}, ${misfit}` }]),
      ...times({ observedAt: known.observedAt, validUntil: known.validUntil }, [...path, key]),
    ];
  });
}

function defectFindings(defect: CaseDefect, read: CaseFile, mel: Mel, tzdb: string, path: Path): Finding[] {
  const { entry: number, row, unit, units, recordedAt, deadline, basis, grants = [] } = defect;
  if (unit !== undefined && units !== undefined) return [{ path, reason: 'give either "unit" or "units"' }];
  const base = read.settings?.base ?? 'UTC';
  const recorded = attempt([...path, 'recordedAt'], () => recordedBefore(recordedAt, read.at, base, tzdb));
  const stored = [
    ...times({ endsAt: deadline?.endsAt }, [...path, 'deadline']),
    ...days({ lastDay: deadline?.lastDay }, [...path, 'deadline']),
    ...days({ lastFlightDayOn: defect.used?.lastFlightDayOn }, [...path, 'used']),
    ...grants.flatMap(({ from, until }, at) => times({ from, until }, [...path, 'grants', at])),
  ];
  if (number === null) {
    const lost = row == null ? [] : [{ path: [...path, 'row'], reason: 'a row needs an entry' }];
    return [...recorded, ...stored, ...lost];
  }
  const entry = mel.entry(number);
  const entries = entryFindings(number, unit === undefined ? units : [unit], mel, path);
  if (entry === undefined) return [...recorded, ...stored, ...entries];
  const many = unitsOf(entry).length > 1 && unit === undefined && units === undefined;
  const which = many ? [{ path, reason: `which unit is it? ${number} has ${none(unitsOf(entry))}` }] : [];
  const ids = [...new Set(rowsOf(entry).map(({ id }) => id))];
  const both =
    basis !== undefined && row != null ? [{ path, reason: 'it stands either on a row or on another basis' }] : [];
  const rowless =
    row == null || ids.includes(row)
      ? []
      : [{ path: [...path, 'row'], reason: `entry "${number}" has no row "${row}"; it has ${none(ids)}` }];
  return [...recorded, ...stored, ...entries, ...which, ...both, ...rowless];
}

/** Reads the record as the interval will, and refuses one that is still to come. */
function recordedBefore(recordedAt: string, at: string, base: string, tzdb: string): void {
  const { recordedAt: instant } = rectificationWindow({ category: 'B', recordedAt, base: baseZoneOr(base), tzdb });
  if (readInstant('recordedAt', instant).epochMilliseconds > readInstant('at', at).epochMilliseconds) {
    throw new IntervalInputError('recordedAt', recordedAt, `is later than the instant of the case, ${at}.`);
  }
}

/** A base that cannot be read is reported once, in its own place. */
function baseZoneOr(base: string): string {
  return attempt([], () => baseZone(base)).length === 0 ? base : 'UTC';
}

function entryFindings(number: string, units: readonly string[] | undefined, mel: Mel, path: Path): Finding[] {
  const entry = mel.entry(number);
  if (entry === undefined) {
    const numbers = mel.entries.map((one) => one.number).slice(0, MOST_NAMED);
    return [
      {
        path: [...path, 'entry'],
        reason: `there is no entry "${number}" in ${mel.content.document}; it has ${none(numbers)}`,
      },
    ];
  }
  const known = unitsOf(entry);
  return (units ?? [])
    .filter((unit) => !known.includes(unit))
    .map((unit) => ({
      path: [...path, 'units'],
      reason: `entry "${number}" has no unit "${unit}"; it has ${none(known)}`,
    }));
}

function workFindings(work: NonNullable<CaseFile['work']>[number], mel: Mel, path: Path): Finding[] {
  const key = typeof work === 'string' ? work : work.work;
  const owed = subjectRows(mel, key).flatMap(([number, row]) => worksOf(number, row));
  const unknown = owed.includes(key)
    ? []
    : [{ path, reason: `no row owes the work "${key}"; its row owes ${none(owed)}` }];
  if (typeof work === 'string') return unknown;
  return [
    ...unknown,
    ...times({ doneAt: work.doneAt, validUntil: work.validUntil }, path),
    ...days({ lastFlightDayOn: work.usedSince?.lastFlightDayOn }, [...path, 'usedSince']),
  ];
}

function judgementFindings(one: NonNullable<CaseFile['judgements']>[number], mel: Mel, path: Path): Finding[] {
  const asked = subjectRows(mel, one.judgement).flatMap(([number, row]) => judgementsOf(number, row));
  const unknown =
    one.judgement === 'combination' || asked.includes(one.judgement)
      ? []
      : [{ path, reason: `no row asks for the judgement "${one.judgement}"; its row asks for ${none(asked)}` }];
  return [...unknown, ...times({ at: one.at, validUntil: one.validUntil }, path)];
}

/** The rows that a key `<entry>/<row>/<id>` may mean, one for each configuration. */
function subjectRows(mel: Mel, key: string): [string, Entry['subEntries'][number]['rows'][number]][] {
  const [number = '', id] = key.split('/');
  const entry = mel.entry(number);
  return entry === undefined
    ? []
    : rowsOf(entry)
        .filter((row) => row.id === id)
        .map((row) => [number, row]);
}

function twice(ids: readonly string[], field: string): Finding[] {
  const again = ids.find((id, index) => ids.indexOf(id) < index);
  return again === undefined ? [] : [{ path: [field], reason: `two of them are called "${again}"` }];
}
