/**
 * Reads a case file: foreign content in, a situation out, or every reason why not. Nothing is guessed: an unknown key,
 * fact, entry, unit, row or piece of work refuses the whole file.
 */
import { findingsAgainst, plainCopy, pointerOf, type Finding, type Mel } from '#mel';
import type { StationFacts } from '../next-flights/next-flights.js';
import type { KnownFact, OpenDefect, PlannedFlight, Situation, WorkState } from '../situation.js';
import type { CaseDefect, CaseError, CaseFact, CaseFile } from './case-file.js';
import { readConditions } from './conditions.js';
import { caseFindings } from './findings.js';
import { CASE_SCHEMA } from './schema.js';

/** The flights in their order: none, one, or those of a day. The situation is about the first of them. */
export interface CaseRead {
  situation: Situation;
  flights: PlannedFlight[];
  stations: StationFacts[];
}

export type ReadCase = CaseRead | { errors: CaseError[] };

const schemaFindings = findingsAgainst(CASE_SCHEMA);
const MOST_ERRORS = 200;

/**
 * `value` is a parsed file, not trusted; `file` only names it in errors; `tzdb` is the version of the time-zone data in
 * use. Never throws on bad content.
 */
export function readCase(value: unknown, file: string, mel: Mel, tzdb: string): ReadCase {
  const refused = (findings: readonly Finding[]): ReadCase => ({
    errors: findings.slice(0, MOST_ERRORS).map(({ path, reason }) => ({ file, pointer: pointerOf(path), reason })),
  });
  const copied = plainCopy(value);
  if ('finding' in copied) return refused([copied.finding]);
  const misshapen = schemaFindings(copied.copy);
  if (misshapen.length > 0) return refused(misshapen);
  // The schema has just said so.
  const read = copied.copy as CaseFile;
  const defects = (read.defects ?? []).map((defect, at) => defectFrom(defect, at, mel));
  const findings = [...caseFindings(read, mel, read.tzdb ?? tzdb), ...defects.flatMap((one) => one.findings)];
  if (findings.length > 0) return refused(findings);
  const flights = flightsOf(read).map((flight) => ({ ...flight, facts: factsFrom(flight.facts ?? {}) }));
  const open = defects.map((one) => one.defect);
  return { situation: situationFrom(read, open, flights[0] ?? null, tzdb), flights, stations: read.stations ?? [] };
}

function flightsOf({ flight, flights }: Pick<CaseFile, 'flight' | 'flights'>): readonly PlannedFlight[] {
  return flights ?? (flight == null ? [] : [flight]);
}

function situationFrom(read: CaseFile, defects: OpenDefect[], flight: PlannedFlight | null, tzdb: string): Situation {
  const { aircraft, work = [], judgements = [], gates, settings } = read;
  return {
    at: read.at,
    tzdb: read.tzdb ?? tzdb,
    aircraft: { ...aircraft, configuration: aircraft.configuration ?? null, serial: aircraft.serial ?? null },
    defects,
    flight,
    facts: factsFrom(read.facts ?? {}),
    work: work.map((one) => workFrom(one, read.at, flight)),
    judgements: judgements.map((one) => ({ ...one, at: one.at ?? read.at })),
    directives: read.directives ?? [],
    gates: { unanswered: [], openWork: [], orphans: [], ...gates },
    settings: {
      base: 'UTC',
      expiryInFlight: 'departure-inside',
      combinationNeedsAcceptance: false,
      budget: 100_000,
      ...settings,
    },
  };
}

function defectFrom(read: CaseDefect, at: number, mel: Mel): { defect: OpenDefect; findings: Finding[] } {
  const { id, unit, units, row, signed, basis, ...rest } = read;
  const checked = readConditions(mel, basis?.conditions ?? []);
  const conditions = 'conditions' in checked ? checked.conditions : [];
  const place = ['defects', at, 'basis', 'conditions'];
  const findings = 'findings' in checked ? checked.findings : [];
  return {
    defect: {
      ...rest,
      id: id ?? `defect ${at + 1}`,
      units: units ?? (unit === undefined ? onlyUnit(read, mel) : [unit]),
      row: row ?? null,
      signed: signed ?? true,
      ...(basis === undefined ? {} : { basis: { ...basis, conditions } }),
    },
    findings: findings.map(({ path, reason }) => ({ path: [...place, ...path], reason })),
  };
}

/** An entry of one unit needs no unit named. */
function onlyUnit({ entry }: CaseDefect, mel: Mel): string[] {
  const subEntries = entry === null ? [] : (mel.entry(entry)?.subEntries ?? []);
  return [...new Set(subEntries.flatMap(({ units }) => units))];
}

function factsFrom(facts: Record<string, CaseFact>): Record<string, KnownFact> {
  return Object.fromEntries(
    Object.entries(facts).map(([key, given]) => [
      key,
      typeof given === 'object' && given !== null ? given : { value: given },
    ]),
  );
}

function workFrom(work: WorkState | string, at: string, flight: PlannedFlight | null): WorkState {
  if (typeof work !== 'string') return work;
  return { work, doneAt: at, ...(flight === null ? {} : { forFlight: flight.id }) };
}
