/** The days told in next-flights.yaml, each written out as the case file that a person would keep. */
import { readFileSync } from 'node:fs';
import { parse } from 'yaml';

interface Rotation {
  first: string;
  every: number;
  minutes: number;
  count: number;
  between: [string, string];
}

export interface DayCase {
  id: string;
  story: string;
  mel: string;
  source: string;
  mark: string;
  basis: string;
  rotation: Rotation;
  flightFacts?: Record<string, object>;
  expect: Record<string, string>;
  kept: number;
  possible: number;
  breaks?: { flight: string; station: string };
  says?: Record<string, string[]>;
  ifFlown?: Record<string, string | null>;
  repeats?: Record<string, string[]>;
  left?: Record<string, string>;
  saves?: { kind: string; keeps?: number; row?: string; says?: string }[];
  notSaved?: string[];
  [part: string]: unknown;
}

const TOLD = new Set(
  'id story mel source mark basis rotation flightFacts expect kept possible breaks says ifFlown repeats left saves notSaved'.split(
    ' ',
  ),
);
const text = (file: string): string => readFileSync(new URL(file, import.meta.url), 'utf8');
const { defaults, cases } = parse(text('next-flights.yaml')) as { defaults: object; cases: DayCase[] };

export const DAYS: readonly DayCase[] = cases;

const plus = (instant: string, minutes: number): string =>
  new Date(Date.parse(instant) + minutes * 60_000).toISOString();

function flightsOf(
  { first, every, minutes, count, between }: Rotation,
  facts: DayCase['flightFacts'] = {},
): object[] {
  return Array.from({ length: count }, (_, at) => ({
    id: `F${at + 1}`,
    from: between[at % 2],
    to: between[(at + 1) % 2],
    offBlockAt: plus(first, at * every),
    onBlockAt: plus(first, at * every + minutes + 20),
    flightMinutes: minutes,
    facts: facts[`F${at + 1}`] ?? {},
  }));
}

/** Refuses a case that does not say where it comes from. */
export function caseFileOf(one: DayCase): object {
  if ([one.source, one.mark, one.basis].some((part) => typeof part !== 'string')) {
    throw new Error(`${one.id} lacks source, mark or basis`);
  }
  const given = Object.fromEntries(Object.entries(one).filter(([part]) => !TOLD.has(part)));
  return { ...defaults, ...given, flights: flightsOf(one.rotation, one.flightFacts) };
}

/** The flight and the answer of each one that a case tells; "F2-F47" names them all. */
export function expectedOf({ expect }: DayCase): [flight: string, verdict: string][] {
  return Object.entries(expect).flatMap(([range, verdict]) =>
    named(range).map((id): [string, string] => [id, verdict]),
  );
}

function named(range: string): string[] {
  const [from = 0, to = from] = range.split('-').map((id) => Number(id.slice(1)));
  return Array.from({ length: to - from + 1 }, (_, at) => `F${from + at}`);
}
