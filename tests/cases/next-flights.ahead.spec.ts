/**
 * Rule 9: looking ahead along the plan gives the same as flying it and judging each flight anew. The recount knows
 * nothing of the look-ahead: it counts from all legs, from the record on, and does the work that its own verdicts ask for.
 */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { judge, nextFlights, type PlannedFlight, type Situation, type Verdict, type WorkState } from '#dispatch';
import { countUsed, rectificationWindow, type Leg, type Used } from '#intervals';
import { loadMel, type Mel, type Repeat } from '#mel';

const RECORDED = '2026-03-02T11:00Z';
const BASE_TIME = Date.parse('2026-03-03T05:00Z');
const at = (minutes: number): string => new Date(BASE_TIME + minutes * 60_000).toISOString();

const intervals = [
  '3 flights',
  '6 cycles',
  '3 flight-days',
  '9 flight-hours',
  '3 calendar-days',
  '60 hours',
  '5 flights or 8 flight-hours',
];
const repeats: Repeat[] = [
  'once',
  'each-departure',
  'each-flight-day',
  { every: '4 flight-hours' },
  { every: '2 flights' },
  { every: '12 hours' },
  { every: '2 flight-days' },
  { afterFirstFlightThenEvery: '3 flight-hours' },
];

interface Drawn {
  interval: string;
  first: Repeat;
  second: Repeat;
  needsPerson: boolean;
  hourClock: 'airborne' | 'block';
  arrival: boolean;
  base: string;
  signed: boolean;
  history: number;
  doneBefore: boolean;
  legs: { ground: number; minutes: number; known: boolean; person: boolean | null; etops: number | null }[];
  until: number | null;
  impossible: number | null;
}

const drawn: fc.Arbitrary<Drawn> = fc.record({
  interval: fc.constantFrom(...intervals),
  first: fc.constantFrom(...repeats),
  second: fc.constantFrom(...repeats),
  needsPerson: fc.boolean(),
  hourClock: fc.constantFrom('airborne', 'airborne', 'block'),
  arrival: fc.boolean(),
  base: fc.constantFrom('UTC', 'Europe/Paris', 'Pacific/Auckland'),
  signed: fc.boolean(),
  history: fc.integer({ min: 0, max: 2 }),
  doneBefore: fc.boolean(),
  legs: fc.array(
    fc.record({
      ground: fc.constantFrom(20, 40, 90, 300, 900),
      minutes: fc.integer({ min: 40, max: 190 }),
      known: fc.constantFrom(true, true, true, true, true, false),
      person: fc.constantFrom(true, true, true, false, null),
      etops: fc.constantFrom(0, 0, 0, 0, 120, null),
    }),
    { minLength: 1, maxLength: 6 },
  ),
  until: fc.constantFrom(null, null, 400, 1500),
  impossible: fc.constantFrom(null, null, null, 0, 1, 2),
});

function melOf({ interval, first, second, needsPerson }: Drawn): Mel {
  const procedure = (repeat: Repeat) => ({
    id: 'M1',
    kind: 'M',
    text: 'look at it',
    minutes: 30,
    ...(repeat === 'once' ? {} : { repeat }),
    needsPersonAtStation: needsPerson,
  });
  const notEtops = { id: 'a', text: 'no ETOPS', when: { fact: 'flight.etopsMinutes', operator: 'equal', value: 0 } };
  const entry = (number: string, row: object) => ({
    number,
    title: `item ${number}`,
    chapter: '30',
    subEntries: [{ id: 'all', units: ['1'], rows: [{ id: 'a', numberRequired: 0, remarks: 'a row', ...row }] }],
  });
  const loaded = loadMel(
    {
      format: 'proviso-mel/1',
      document: 'ahead',
      operator: 'nobody',
      aircraftType: 'X',
      revision: '1',
      effectiveOn: '2026-01-01',
      entries: [
        entry('e0', {
          category: 'A',
          interval,
          procedures: [procedure(first)],
          placard: { text: 'INOP', position: 'panel' },
          consideredInoperative: [{ entry: 'e1' }],
        }),
        entry('e1', { category: 'C', provisos: [notEtops], procedures: [procedure(second)] }),
      ],
    },
    'ahead',
  );
  if ('errors' in loaded) throw new Error(JSON.stringify(loaded.errors));
  return loaded.mel;
}

function planOf({ legs }: Drawn): PlannedFlight[] {
  let clock = 0;
  return legs.map(({ ground, minutes, known, person, etops }, index) => {
    const [off, on] = [clock + ground, clock + ground + minutes + 15];
    clock = on;
    return {
      id: `F${index}`,
      from: `S${index}`,
      to: `S${index + 1}`,
      offBlockAt: at(off),
      onBlockAt: at(on),
      ...(known ? { flightMinutes: minutes } : {}),
      facts: {
        'flight.authorisedPersonAtStation': { value: person },
        ...(etops === null ? {} : { 'flight.etopsMinutes': { value: etops } }),
      },
    };
  });
}

const HISTORY: Leg[] = [
  ['2026-03-02T15:00Z', '2026-03-02T17:00Z', 105],
  ['2026-03-03T01:00Z', '2026-03-03T03:30Z', 130],
].map(([offBlockAt, onBlockAt, minutes]) => ({
  offBlockAt: String(offBlockAt),
  onBlockAt: String(onBlockAt),
  landedAt: String(onBlockAt),
  blockMinutes: Number(minutes) + 15,
  flightMinutes: Number(minutes),
  cycles: 1,
  landings: 1,
}));

/** Everything counted anew from all legs. Where the plan gave no airborne time, that counter is not known. */
function counted(interval: string, from: string, legs: Leg[], unknownHours: readonly string[], one: Drawn): Used {
  const clock = rectificationWindow({ category: 'A', interval, recordedAt: from, base: one.base, tzdb: '2026a' });
  const { flightMinutes, ...used } = countUsed(clock, legs);
  const isUnknown = unknownHours.some((off) => Date.parse(off) >= Date.parse(from));
  return isUnknown ? used : { ...used, flightMinutes };
}

function legFrom({ offBlockAt, onBlockAt = '', flightMinutes }: PlannedFlight): Leg {
  const block = (Date.parse(onBlockAt) - Date.parse(offBlockAt)) / 60_000;
  const airborne = flightMinutes ?? 1;
  return {
    offBlockAt,
    onBlockAt,
    landedAt: onBlockAt,
    blockMinutes: block,
    flightMinutes: airborne,
    cycles: 1,
    landings: 1,
  };
}

/** What is not done and can be, from the conditions themselves. */
function outstanding({ items }: Verdict): { work: string; defect: { defect?: string } }[] {
  return items.flatMap(({ cause, conditions }) =>
    conditions
      .filter(({ kind }) => kind === 'procedure' || kind === 'placard' || kind === 'signed-row')
      .filter(({ now, after }) => now !== 'T' && after !== 'F')
      .map(({ id }) => ({ work: id, defect: cause.kind === 'failed' ? { defect: cause.defect } : {} })),
  );
}

async function recount(mel: Mel, one: Drawn, now: Situation, plan: PlannedFlight[]): Promise<Verdict[]> {
  const legs = HISTORY.slice(0, one.history);
  const unknown: string[] = [];
  const done: WorkState[] = now.work.filter(({ doneAt }) => doneAt !== undefined);
  const verdicts: Verdict[] = [];
  let signed = one.signed;
  for (const [index, flight] of plan.entries()) {
    const impossible = now.work.filter(({ doneAt, forFlight }) => doneAt === undefined && forFlight === flight.id);
    const situation: Situation = {
      ...now,
      at: plan[index - 1]?.onBlockAt ?? now.at,
      flight,
      defects: now.defects.map((defect) => ({
        ...defect,
        signed,
        used: counted(one.interval, RECORDED, legs, unknown, one),
      })),
      work: [
        ...done.map((record) => ({
          ...record,
          usedSince: counted('1 flights', record.doneAt ?? '', legs, unknown, one),
        })),
        ...impossible,
      ],
    };
    const verdict = await judge(mel, situation);
    verdicts.push(verdict);
    for (const { work, defect } of outstanding(verdict)) {
      if (work.endsWith('/signature')) signed = true;
      else done.push({ work, doneAt: flight.offBlockAt, forFlight: flight.id, ...defect });
    }
    legs.push(legFrom(flight));
    if (flight.flightMinutes === undefined) unknown.push(flight.offBlockAt);
  }
  return verdicts;
}

function situationOf(one: Drawn, plan: PlannedFlight[]): Situation {
  const legs = HISTORY.slice(0, one.history);
  const doneAt = '2026-03-02T13:00Z';
  const before: WorkState[] = one.doneBefore
    ? ['e0/a/M1', 'e0/a/placard', 'e1/a/M1'].map((work) => ({
        work,
        doneAt,
        usedSince: counted('1 flights', doneAt, legs, [], one),
      }))
    : [];
  const blocked = one.impossible === null ? undefined : plan[one.impossible];
  return {
    at: at(0),
    tzdb: '2026a',
    aircraft: { registration: 'Q-RND', type: 'X', configuration: [], serial: 1 },
    defects: [
      {
        id: 'D0',
        entry: 'e0',
        units: ['1'],
        row: 'a',
        signed: one.signed,
        recordedAt: RECORDED,
        used: counted(one.interval, RECORDED, legs, [], one),
      },
    ],
    flight: null,
    facts: one.until === null ? {} : { 'flight.etopsMinutes': { value: 0, validUntil: at(one.until) } },
    work: [...before, ...(blocked ? [{ work: 'e0/a/M1', possible: false, forFlight: blocked.id }] : [])],
    judgements: [],
    directives: [],
    gates: { unanswered: [], openWork: [], orphans: [] },
    settings: {
      base: one.base,
      expiryInFlight: one.arrival ? 'arrival-inside' : 'departure-inside',
      combinationNeedsAcceptance: false,
      budget: 10_000,
      counting: { hourClock: one.hourClock },
    },
  };
}

it('looking ahead gives what judging the flown history gives, answer by answer', async () => {
  const seen: Record<string, number> = {};
  await fc.assert(
    fc.asyncProperty(drawn, async (one) => {
      const [mel, plan] = [melOf(one), planOf(one)];
      const situation = situationOf(one, plan);
      const ahead = await nextFlights(mel, situation, plan, { savingBudget: 0 });
      const flown = await recount(mel, one, situation, plan);
      const first = flown.findIndex(({ lo, verdict }) => lo === 'may-not-fly' && verdict !== 'nothing-open');
      expect(ahead.kept).toBe(first < 0 ? plan.length : first);
      expect(ahead.flights.map(({ verdict }) => verdict)).toEqual(flown);
      for (const { verdict } of flown.slice(1)) seen[verdict] = (seen[verdict] ?? 0) + 1;
    }),
    { numRuns: 90, seed: 3 },
  );
  for (const verdict of ['may-fly', 'after-work', 'not-settled', 'may-not-fly']) {
    expect(seen[verdict], verdict).toBeGreaterThan(10);
  }
});
