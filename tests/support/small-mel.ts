/** Builders of small invented MELs and situations: each gives a valid thing, and a test states only what matters to it. */
import type { Situation } from '#dispatch';
import { loadMel, type Condition, type Entry, type Mel, type Row } from '#mel';

type RowChange = Partial<Omit<Row, 'provisos'>> & { provisos?: Condition[] };

/** An entry with one unit `1`, or those given, and one row per change, called 1, 2, ... */
export function entry(number: string, rows: RowChange[], units: string[] = ['1'], more: Partial<Entry> = {}): Entry {
  return {
    number,
    title: `Item ${number}`,
    chapter: '30',
    subEntries: [{ id: 'all', units, rows: rows.map((change, at) => row(`${at + 1}`, change, units)) }],
    ...more,
  };
}

function row(id: string, { provisos, ...change }: RowChange, units: string[]): Row {
  return {
    id,
    category: 'C',
    numberInstalled: units.length,
    numberRequired: 0,
    remarks: 'may be inoperative',
    ...(provisos === undefined
      ? {}
      : { provisos: provisos.map((when, at) => ({ id: `p${at + 1}`, text: `Proviso ${at + 1}.`, when })) }),
    ...change,
  };
}

export function melOf(...entries: Entry[]): Mel {
  const content = {
    format: 'proviso-mel/1',
    document: 'Invented MEL',
    operator: 'nobody',
    aircraftType: 'X',
    revision: '1',
    effectiveOn: '2026-01-01',
    entries,
  };
  const loaded = loadMel(content, 'invented');
  if ('errors' in loaded) throw new Error(JSON.stringify(loaded.errors));
  return loaded.mel;
}

/** 10 March 2026, 06:00 UTC; a flight at 08:00; a defect is recorded the day before unless it says otherwise. */
export function situationOf(
  defects: (Partial<Situation['defects'][number]> & { entry: string | null })[],
  change: Partial<Situation> = {},
): Situation {
  return {
    at: '2026-03-10T06:00Z',
    tzdb: '2026a',
    aircraft: { registration: 'Q-ABC', type: 'X', configuration: [], serial: 1 },
    defects: defects.map((defect, at) => ({
      id: `D${at + 1}`,
      units: ['1'],
      row: '1',
      signed: true,
      recordedAt: '2026-03-09T12:00Z',
      ...defect,
    })),
    flight: {
      id: 'F1',
      from: 'Northmere',
      to: 'Saltby',
      offBlockAt: '2026-03-10T08:00Z',
      onBlockAt: '2026-03-10T10:00Z',
      flightMinutes: 105,
    },
    facts: {},
    work: [],
    judgements: [],
    directives: [],
    gates: { unanswered: [], openWork: [], orphans: [] },
    settings: { base: 'UTC', expiryInFlight: 'departure-inside', combinationNeedsAcceptance: false, budget: 1000 },
    ...change,
  };
}
