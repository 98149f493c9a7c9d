import { describe, expect, test } from 'vitest';
import {
  atStation,
  judge,
  type StationFacts,
  type OpenDefect,
  type Situation,
  type Verdict,
  type WorkState,
} from '#dispatch';
import { loadMel, type Mel } from '#mel';
import { instantOf, plannedFlights, type SeedFlight } from './planned-flights.js';
import { readSeed, readSeedFile, type SeedAct } from './seed-files.js';

const folder = import.meta.dirname;
const seed = readSeed(folder);
const dayZero = '2026-01-15';
const flights = plannedFlights(seed, dayZero);
const mel = melOf('mel.yaml');

const nameOf = (id: string): string => seed.people.people.find((person) => person.id === id)?.name ?? '';
const itemsOf = (mark: string) => {
  const aircraft = seed.openItems.aircraft.find((one) => one.mark === mark);
  return { items: aircraft?.items ?? [], judged: aircraft?.acts ?? [] };
};
const isOpen = (acts: SeedAct[]): boolean => !acts.some(({ act }) => act === 'released');
const deferralIn = (acts: SeedAct[]) => acts.find((act) => act.act === 'deferred');

/** What the movements say: the flights of the aircraft between the deferral and the one that is asked about. */
const flownSince = (since: string, until: SeedFlight): SeedFlight[] =>
  flights.filter(
    (one) => one.aircraft === until.aircraft && one.offBlockAt > since && one.offBlockAt < until.offBlockAt,
  );

function defectOf(id: string, acts: SeedAct[], flight: SeedFlight): OpenDefect[] {
  const deferral = deferralIn(acts);
  const [first] = acts;
  if (deferral === undefined || first === undefined || !isOpen(acts)) return [];
  const { entry, units, row } = deferral;
  const flown = flownSince(instantOf(deferral.at, dayZero, seed), flight);
  const flightMinutes = flown.reduce((sum, one) => sum + one.flightMinutes, 0);
  const recordedAt = instantOf(first.at, dayZero, seed);
  return [{ id, entry, units, row, signed: true, recordedAt, used: { flights: flown.length, flightMinutes } }];
}

function workOf(id: string, acts: SeedAct[]): WorkState[] {
  const deferral = deferralIn(acts);
  if (deferral === undefined) return [];
  return acts.flatMap((act) => {
    const done = { defect: id, doneAt: instantOf(act.at, dayZero, seed), by: nameOf(act.by) };
    const key = `${deferral.entry}/${deferral.row}`;
    if (act.act === 'procedure-signed') return [{ work: `${key}/${act.work}`, ...done }];
    return act.act === 'placard-fitted' ? [{ work: `${key}/placard`, ...done }] : [];
  });
}

/** The aircraft as it stands just before a flight, with nothing done since the demo was loaded. */
function before(flightId: string): Situation {
  const flight = flights.find(({ id }) => id === flightId);
  const aircraft = seed.fleet.aircraft.find(({ mark }) => mark === flight?.aircraft);
  if (flight === undefined || aircraft === undefined) throw new Error(flightId);
  const { items, judged } = itemsOf(aircraft.mark);
  return {
    at: instantOf({ day: 0, time: '04:55', station: 'QVR' }, dayZero, seed),
    tzdb: 'unknown',
    aircraft: {
      registration: aircraft.mark,
      type: aircraft.type,
      configuration: aircraft.configuration,
      serial: aircraft.serial,
    },
    defects: items.flatMap(({ id, acts }) => defectOf(id, acts, flight)),
    flight,
    facts: {},
    work: items.flatMap(({ id, acts }) => workOf(id, acts)),
    judgements: judged.map(({ accepted, by, at }) => ({
      judgement: 'combination',
      accepted,
      by: nameOf(by),
      role: 'maintenance-control',
      at: instantOf(at, dayZero, seed),
    })),
    directives: [],
    gates: {
      unanswered: items.filter(({ acts }) => acts.length === 1).map(({ id }) => id),
      openWork: [],
      orphans: [],
    },
    settings: {
      base: 'Europe/Athens',
      expiryInFlight: 'departure-inside',
      combinationNeedsAcceptance: true,
      budget: 20_000,
    },
  };
}

function melOf(file: string): Mel {
  const loaded = loadMel(readSeedFile(folder, file), file);
  if ('errors' in loaded) throw new Error(JSON.stringify(loaded.errors));
  return loaded.mel;
}

const flightOf = (mark: string, day: number, route: string): string => {
  const rotation = seed.flights.rotations.find(({ aircraft }) => aircraft === mark);
  const flight = rotation?.flights.find((one) => one.day === day && one.route === route);
  if (flight === undefined) throw new Error(`${mark} ${day} ${route}`);
  return flight.id;
};

const judged = (
  mark: string,
  day: number,
  route: string,
  change: (situation: Situation) => Situation = (same) => same,
): Promise<Verdict> => {
  const own = mark === 'Q-SBA' ? melOf('mel-sallowby.yaml') : mel;
  return judge(own, atStation(own, change(before(flightOf(mark, day, route))), stationsOf(mark)));
};

const stationsOf = (mark: string): StationFacts[] =>
  seed.people.atStations
    .filter(({ operator }) => operator === (mark === 'Q-SBA' ? 'op-sallowby' : 'op-orrinfell'))
    .map(({ station, person, source }) => ({ station, maintenance: person !== undefined, source }));

const without =
  (id: string) =>
  (situation: Situation): Situation => ({
    ...situation,
    defects: situation.defects.filter((defect) => defect.id !== id),
  });

const codeOf = async (verdict: Promise<Verdict>): Promise<string> => (await verdict).verdict;

describe('the first answers that the demo gives', () => {
  test('nothing open', async () => {
    expect(await codeOf(judged('Q-KEA', 0, 'vr-ht'))).toBe('nothing-open');
  });

  test('an unanswered write-up: may not fly', async () => {
    expect(await codeOf(judged('Q-KEB', 0, 'vr-om'))).toBe('may-not-fly');
  });

  test('a check owed each flight-day: after work today, over its interval the day after tomorrow', async () => {
    const today = await judged('Q-KEC', 0, 'vr-ht');
    expect(today.verdict).toBe('after-work');
    expect(today.work.map(({ work }) => work)).toEqual(['29-31-11/1/M1']);
    expect(await codeOf(judged('Q-KEC', 1, 'vr-ht'))).toBe('after-work');
    expect(await codeOf(judged('Q-KEC', 2, 'vr-ht'))).toBe('may-not-fly');
  });

  test('two items and icing: mending the wing valve frees both, mending the detector frees nothing', async () => {
    expect(await codeOf(judged('Q-KED', 0, 'vr-ht'))).toBe('may-not-fly');
    expect(await codeOf(judged('Q-KED', 0, 'vr-ht', without('it-ked-1')))).toBe('may-fly');
    expect(await codeOf(judged('Q-KED', 0, 'vr-ht', without('it-ked-2')))).toBe('may-not-fly');
  });

  test('two items and no forecast yet: not settled; none forecast: may fly', async () => {
    expect(await codeOf(judged('Q-KED', 2, 'vr-ht'))).toBe('not-settled');
    expect(await codeOf(judged('Q-KED', 3, 'vr-ht'))).toBe('may-fly');
  });

  test('a start valve by hand: after work where somebody can stand there, not where nobody can, asked where nobody knows', async () => {
    const base = await judged('Q-KEO', 0, 'vr-lt');
    expect(base.verdict).toBe('after-work');
    expect(base.work.map(({ work }) => work)).toEqual(['80-12-11/1/M2', '80-12-11/1/O1']);
    expect(await codeOf(judged('Q-KEO', 1, 'du-vr'))).toBe('may-not-fly');
    const asked = await judged('Q-KEO', 3, 'om-vr');
    expect(asked.verdict).toBe('not-settled');
    expect(asked.questions.map(({ fact }) => fact)).toEqual(['flight.authorisedPersonAtStation']);
    expect(await codeOf(judged('Q-KEO', 4, 'ht-mw'))).toBe('may-not-fly');
  });

  test('an APU row of six flights: the last two fly on day 0, the seventh does not', async () => {
    expect(await codeOf(judged('Q-KEP', 0, 'ht-mw'))).toBe('after-work');
    expect(await codeOf(judged('Q-KEP', 0, 'mw-ht'))).toBe('after-work');
    expect(await codeOf(judged('Q-KEP', 1, 'ht-mw'))).toBe('may-not-fly');
  });

  test('the second operator: by day it may fly', async () => {
    expect(await codeOf(judged('Q-SBA', 0, 'lt-sj'))).toBe('may-fly');
  });
});
