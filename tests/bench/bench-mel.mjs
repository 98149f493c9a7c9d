/** Eight entries with two provisos each, of the sizes that MELs have: some single facts, some trees of up to six leaves. */

const level = { fact: 'flight.level', operator: 'lessThanInclusive', value: 330 };
const noIcing = { fact: 'flight.icing', operator: 'equal', value: 'none' };
const noEtops = { fact: 'flight.etopsMinutes', operator: 'lessThanInclusive', value: 120 };
const day = { fact: 'flight.daylight', operator: 'equal', value: 'day' };
const notWet = { not: { fact: 'flight.runwayState', operator: 'equal', value: 'contaminated' } };
const vmc = { fact: 'flight.conditions', operator: 'equal', value: 'vmc' };
const works = (entry) => ({ fact: 'entry.up', operator: 'greaterThanInclusive', value: 1, params: { entry } });

const numberOf = (n) => `${20 + n}-11-11`;

const trees = (n) => [
  { all: [level, noEtops, works(numberOf((n % 8) + 1))] },
  { any: [{ all: [noIcing, notWet] }, { all: [day, vmc, { not: { ...level, operator: 'greaterThan' } }] }] },
];

const entry = (n) => ({
  number: numberOf(n),
  title: `Item ${n}`,
  chapter: String(20 + n),
  subEntries: [
    {
      id: 'all',
      units: ['1', '2'],
      rows: [
        {
          id: '1',
          category: 'C',
          numberInstalled: 2,
          numberRequired: 1,
          remarks: 'Invented, for measuring only.',
          provisos: trees(n).map((when, index) => ({ id: 'ab'[index], text: `Proviso ${'ab'[index]}`, when })),
        },
      ],
    },
  ],
});

export const content = {
  format: 'proviso-mel/1',
  document: 'MEL-BENCH',
  operator: 'none',
  aircraftType: 'Kellwing',
  revision: '1',
  effectiveOn: '2026-01-01',
  notice: 'INVENTED, for measuring only.',
  entries: [1, 2, 3, 4, 5, 6, 7, 8].map(entry),
};

export const flightFacts = {
  'flight.level': 310,
  'flight.icing': 'none',
  'flight.etopsMinutes': 0,
  'flight.daylight': 'day',
  'flight.runwayState': 'dry',
  'flight.conditions': 'imc',
};

export const situation = (defects) => ({
  at: '2026-01-20T08:00:00Z',
  tzdb: process.versions.tz,
  aircraft: { registration: 'Q-BEN', type: 'Kellwing', configuration: [], serial: 1 },
  defects: content.entries.slice(0, defects).map(({ number }, index) => ({
    id: `d${index}`,
    entry: number,
    units: ['1'],
    row: '1',
    signed: true,
    recordedAt: '2026-01-19T08:00:00Z',
    deadline: { lastDay: '2026-01-29', endsAt: '2026-01-30T00:00:00Z' },
  })),
  flight: {
    id: 'f1',
    from: 'QAA',
    to: 'QBB',
    offBlockAt: '2026-01-20T10:00:00Z',
    onBlockAt: '2026-01-20T12:00:00Z',
    flightMinutes: 100,
    facts: flightFacts,
  },
  facts: {},
  work: [],
  judgements: [],
  directives: [],
  gates: { unanswered: [], openWork: [], orphans: [] },
  settings: { base: 'UTC', expiryInFlight: 'departure-inside', combinationNeedsAcceptance: false, budget: 20_000 },
});
