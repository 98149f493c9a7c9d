/**
 * What learning a fact may do to a plan (rules 7 and 8), and what is false if it is stated more strongly.
 */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { nextFlights, type NextFlights, type PlannedFlight, type Situation } from '#dispatch';
import { loadMel } from '#mel';
import { randomCase } from './verdicts.random.js';

const CELLS = {
  'flight.rvsm': [true, false],
  'flight.icing': ['none', 'forecast', 'known'],
  'flight.etopsMinutes': [0, 120, 180],
} as const;
type Key = keyof typeof CELLS;
const KEYS = Object.keys(CELLS) as Key[];

const flightFacts = fc.record({
  'flight.rvsm': fc.constantFrom(false, false, null),
  'flight.icing': fc.constantFrom('none', 'none', null, null),
  'flight.etopsMinutes': fc.constantFrom(0, 0, 120, null),
});

const drawn = fc.record({
  one: randomCase,
  facts: fc.array(flightFacts, { minLength: 3, maxLength: 3 }),
  rows: fc.constantFrom('recorded', 'any', 'any'),
  pick: fc.nat(20),
  cell: fc.nat(2),
});

const planOf = (facts: object[]): PlannedFlight[] =>
  facts.map((own, index) => ({
    id: `F${index}`,
    from: 'Northmere',
    to: 'Northmere',
    offBlockAt: `2026-03-10T${String(8 + 3 * index).padStart(2, '0')}:00Z`,
    onBlockAt: `2026-03-10T${10 + 3 * index}:00Z`,
    flightMinutes: 100,
    facts: Object.fromEntries(Object.entries(own).map(([key, value]) => [key, { value: value as string | null }])),
  }));

it('a fact made known never lowers the flights known to be kept, and never raises those that may be', async () => {
  let learnt = 0;
  let changed = 0;
  await fc.assert(
    fc.asyncProperty(drawn, async ({ one: { mel, situation }, facts, rows, pick, cell }) => {
      const options = { rows, savingBudget: 0 } as const;
      const start = { ...situation, facts: {} };
      const before = await nextFlights(mel, start, planOf(facts), options);
      const asked = askedOf(before);
      fc.pre(asked.length > 0);
      const { key, flight } = asked[pick % asked.length]!;
      const learntNow = { [key]: CELLS[key][cell % CELLS[key].length] };
      const known = facts.map((own, index) => (index === flight ? { ...own, ...learntNow } : own));
      const after = await nextFlights(mel, start, planOf(known), options);
      expect(before.shownBest && after.shownBest).toBe(true);
      expect(after.kept).toBeGreaterThanOrEqual(before.kept);
      expect(after.possible).toBeLessThanOrEqual(before.possible);
      expect(after.possible).toBeGreaterThanOrEqual(after.kept);
      learnt += 1;
      if (after.kept !== before.kept || after.possible !== before.possible) changed += 1;
    }),
    { numRuns: 25, seed: 5 },
  );
  expect(learnt).toBeGreaterThan(20);
  expect(changed).toBeGreaterThan(2);
});

/** The facts of flights that some answer of the day asks for. */
function askedOf({ flights }: NextFlights): { key: Key; flight: number }[] {
  return flights.flatMap(({ verdict }, flight) =>
    KEYS.filter((key) => verdict.questions.some(({ fact }) => fact === key)).map((key) => ({ key, flight })),
  );
}

const proviso = (when: object) => ({ provisos: [{ id: 'a', text: 'as it says', when }] });
const common = { category: 'C', numberRequired: 0, remarks: 'a row' };

it('but a later flight can change for the worse, since another choice is then better for the whole plan', async () => {
  const loaded = loadMel(
    {
      format: 'proviso-mel/1',
      document: 'witness',
      operator: 'nobody',
      aircraftType: 'X',
      revision: '1',
      effectiveOn: '2026-01-01',
      entries: [
        {
          number: 'e0',
          title: 'item',
          chapter: '30',
          subEntries: [
            {
              id: 'all',
              units: ['1'],
              rows: [
                { ...common, id: 'a', ...proviso({ fact: 'flight.icing', operator: 'equal', value: 'none' }) },
                { ...common, id: 'b', ...proviso({ fact: 'flight.rvsm', operator: 'equal', value: false }) },
              ],
            },
          ],
        },
      ],
    },
    'witness',
  );
  if ('errors' in loaded) throw new Error(JSON.stringify(loaded.errors));
  const situation: Situation = {
    at: '2026-03-10T06:00Z',
    tzdb: '2026a',
    aircraft: { registration: 'Q-RND', type: 'X', configuration: [], serial: 1 },
    defects: [{ id: 'D0', entry: 'e0', units: ['1'], row: 'a', signed: true, recordedAt: '2026-03-09T12:00Z' }],
    flight: null,
    facts: {},
    work: [],
    judgements: [],
    directives: [],
    gates: { unanswered: [], openWork: [], orphans: [] },
    settings: { base: 'UTC', expiryInFlight: 'departure-inside', combinationNeedsAcceptance: false, budget: 1000 },
  };
  const day = (rvsm: boolean | null) =>
    nextFlights(
      loaded.mel,
      situation,
      planOf([
        { 'flight.icing': 'none', 'flight.rvsm': rvsm },
        { 'flight.icing': null, 'flight.rvsm': false },
        { 'flight.icing': 'none', 'flight.rvsm': true },
      ]),
      { rows: 'any' },
    );
  const answers = ({ flights }: NextFlights) => flights.map(({ verdict }) => verdict.verdict);
  const [before, after] = [await day(null), await day(false)];
  expect([before.kept, answers(before)]).toEqual([1, ['may-fly', 'not-settled', 'may-fly']]);
  expect([after.kept, answers(after)]).toEqual([2, ['after-work', 'may-fly', 'may-not-fly']]);
});
