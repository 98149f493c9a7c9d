/**
 * Small MELs of two to four entries by the ten thousand, with chains and cycles of considered-inoperative units, one of
 * several units failed, partners that must be down, two configurations, work of every standing and unknown facts. Several
 * situations are drawn on each MEL, since loading one costs more than judging by it.
 */
import type { OpenDefect, Situation } from '#dispatch';
import { loadMel, type Condition, type ConditionLeaf, type EntryRef, type Mel } from '#mel';
import { Dice } from '../support/dice.js';

export interface DrawnCase {
  mel: Mel;
  situation: Situation;
}

interface Shape {
  number: string;
  units: string[];
  rows: string[];
  configurations: string[];
}

export function drawCases(seed: number, count: number): DrawnCase[] {
  const dice = new Dice(seed);
  const shapes = dice
    .list(2, 4, () => 0)
    .map((_, at): Shape => ({
      number: `e${at}`,
      units: dice.of([['1'], ['1', '2'], ['1', '2']]),
      rows: dice.of([['a'], ['a', 'b'], ['a', 'b']]),
      configurations: dice.chance(0.1) ? ['OLD', 'NEW'] : [],
    }));
  const mel = drawMel(dice, shapes);
  return Array.from({ length: count }, () => ({ mel, situation: drawSituation(dice, shapes) }));
}

/** True of the usual flight. */
const KIND_LEAVES: readonly ConditionLeaf[] = [
  { fact: 'flight.rvsm', operator: 'equal', value: false },
  { fact: 'flight.icing', operator: 'in', value: ['none', 'forecast'] },
  { fact: 'flight.icing', operator: 'notEqual', value: 'known' },
  { fact: 'flight.etopsMinutes', operator: 'lessThanInclusive', value: 120 },
  { fact: 'flight.etopsMinutes', operator: 'equal', value: 0 },
];
/** What may be denied: true of the usual flight only when denied. */
const DENIED_LEAVES: readonly ConditionLeaf[] = [
  { fact: 'flight.rvsm', operator: 'equal', value: true },
  { fact: 'flight.icing', operator: 'in', value: ['known', 'forecast'] },
  { fact: 'flight.etopsMinutes', operator: 'equal', value: 180 },
];

function drawMel(dice: Dice, shapes: readonly Shape[]): Mel {
  const content = {
    format: 'proviso-mel/1',
    document: 'drawn',
    operator: 'nobody',
    aircraftType: 'X',
    revision: '1',
    effectiveOn: '2026-01-01',
    entries: shapes.map((shape) => ({
      number: shape.number,
      title: `item ${shape.number}`,
      chapter: '30',
      subEntries: (shape.configurations.length === 0 ? ['ALL'] : shape.configurations).map((code) => ({
        id: code.toLowerCase(),
        units: shape.units,
        rows: shape.rows.map((id) => drawRow(dice, shapes, shape, id)),
        ...(code === 'ALL' ? {} : { appliesTo: { configurations: [code] } }),
      })),
    })),
  };
  const loaded = loadMel(content, 'drawn');
  if ('errors' in loaded) throw new Error(JSON.stringify(loaded.errors));
  return loaded.mel;
}

/** Row a asks for J1 and owes M1, so that the keys of work and judgement leaves exist; row b owes nothing. */
function drawRow(dice: Dice, shapes: readonly Shape[], { units }: Shape, id: string): object {
  const some = <T extends object>(probability: number, make: () => T): T | object =>
    dice.chance(probability) ? make() : {};
  const ref = (): EntryRef => drawRef(dice, shapes);
  return {
    id,
    category: 'C',
    numberRequired: dice.upTo(units.length - 1),
    remarks: 'a row',
    ...some(0.7, () => ({
      provisos: dice
        .list(1, 2, () => drawCondition(dice, shapes, 2))
        .map((when, at) => ({ id: `p${at}`, text: `proviso ${at}`, when })),
    })),
    ...some(0.35, () => ({ consideredInoperative: dice.list(1, 2, ref) })),
    ...some(0.1, () => ({ notes: [{ text: 'a note', lost: [ref()] }] })),
    ...some(0.06, () => ({ needsDown: [ref()] })),
    ...some(0.2, () => ({ covers: dice.someOf(units) })),
    ...some(0.06, () => ({ incomplete: 'part of it is not held' })),
    ...some(0.3, () => ({ placard: { text: 'INOP', position: 'panel' } })),
    ...(id === 'b'
      ? {}
      : {
          procedures: [{ id: 'M1', kind: 'M', text: 'do it', minutes: 10 }],
          judgements: [{ id: 'J1', question: 'is it good?', by: 'commander' }],
        }),
  };
}

function drawRef(dice: Dice, shapes: readonly Shape[]): EntryRef {
  const { number, units } = dice.of(shapes);
  return dice.chance(0.5) ? { entry: number } : { entry: number, units: dice.someOf(units) };
}

function drawCondition(dice: Dice, shapes: readonly Shape[], depth: number): Condition {
  const kind = depth === 0 ? 0 : dice.upTo(9);
  const parts = (): Condition[] => dice.list(1, 3, () => drawCondition(dice, shapes, depth - 1));
  if (kind < 5) return drawLeaf(dice, shapes);
  if (kind < 7) return { all: parts() };
  if (kind < 9) return { any: parts() };
  return { not: dice.chance(0.5) ? dice.of(DENIED_LEAVES) : { any: dice.list(1, 2, () => dice.of(DENIED_LEAVES)) } };
}

/** Leaves about units, work and judgements stand only where more truth helps. */
function drawLeaf(dice: Dice, shapes: readonly Shape[]): ConditionLeaf {
  const kind = dice.upTo(10);
  if (kind < 4) return dice.of(KIND_LEAVES);
  const { number, units } = dice.of(shapes);
  const done = (fact: string, param: object): ConditionLeaf => ({
    fact,
    operator: 'equal',
    value: true,
    params: param,
  });
  if (kind === 4) return done('work.done', { work: `${number}/a/M1` });
  if (kind === 5) return done('judgement.accepted', { judgement: `${number}/a/J1` });
  const least = { operator: 'greaterThanInclusive' as const };
  const one = { ...least, value: 1, params: { entry: number, units: [dice.of(units)] } };
  if (kind > 8) return { fact: 'entry.up', ...one };
  const fact = dice.of(['entry.up', 'entry.notFailed']);
  return { fact, ...least, value: 1 + dice.upTo(units.length - 1), params: { entry: number } };
}

const AT = '2026-03-10T06:00Z';

/** How much speaks against a flight: nothing, work still to be done, things not known, or anything at all. */
type Mood = 'kind' | 'workable' | 'unknown' | 'any';

function drawSituation(dice: Dice, shapes: readonly Shape[]): Situation {
  const mood = dice.of<Mood>(['kind', 'kind', 'workable', 'unknown', 'unknown', 'any']);
  const isAny = mood === 'any';
  const defects = dice.chance(0.14)
    ? []
    : dice.list(1, 3, () => 0).map((_, at) => drawDefect(dice, shapes, mood, at));
  const configured = dice.of([['OLD'], ['NEW']]);
  return {
    at: AT,
    tzdb: '2026a',
    aircraft: {
      registration: 'Q-RND',
      type: 'X',
      configuration: mood === 'unknown' && dice.chance(0.5) ? null : configured,
      serial: 1,
    },
    defects,
    flight: { id: 'F1', from: 'Northmere', to: 'Saltby', offBlockAt: '2026-03-10T08:00Z' },
    facts: drawFacts(dice, mood),
    work: shapes.flatMap(({ number }) =>
      ['M1', 'placard'].flatMap((id) => drawWork(dice, mood, `${number}/a/${id}`, defects)),
    ),
    judgements: [
      ...shapes.flatMap(({ number }) => drawJudgement(dice, mood, `${number}/a/J1`, 'commander')),
      ...drawJudgement(dice, mood, 'combination', 'maintenance-control'),
    ],
    directives: isAny && dice.chance(0.15) ? [{ number: 'AD 1', entry: dice.of(shapes).number }] : [],
    gates: { unanswered: isAny && dice.chance(0.1) ? ['sheet 7'] : [], openWork: [], orphans: [] },
    settings: {
      base: 'UTC',
      expiryInFlight: 'departure-inside',
      combinationNeedsAcceptance: dice.chance(0.4),
      budget: 10_000,
    },
  };
}

function drawDefect(dice: Dice, shapes: readonly Shape[], mood: Mood, at: number): OpenDefect {
  const { number, units, rows } = dice.of(shapes);
  return {
    id: `D${at}`,
    entry: number,
    units: dice.chance(mood === 'unknown' ? 0.4 : 0.1) ? units : [dice.of(units)],
    row: dice.chance(mood === 'any' ? 0.15 : 0.03) ? null : dice.of(rows),
    signed: dice.chance(mood === 'workable' || mood === 'any' ? 0.6 : 0.97),
    recordedAt: '2026-03-09T12:00Z',
  };
}

function drawFacts(dice: Dice, mood: Mood): Situation['facts'] {
  const unknown = mood === 'unknown' ? 0.5 : mood === 'any' ? 0.15 : 0;
  const drawn = <T>(usual: T, others: readonly T[]): { value: T | null } => {
    if (dice.chance(unknown)) return { value: null };
    return { value: dice.chance(mood === 'any' ? 0.4 : 0.05) ? dice.of(others) : usual };
  };
  return {
    'flight.rvsm': drawn(false, [true]),
    'flight.icing': drawn('none', ['forecast', 'known']),
    'flight.etopsMinutes': drawn(0, [120, 180]),
  };
}

/** Most records name every defect, so that two of the same row are both served; some name none. */
function drawWork(dice: Dice, mood: Mood, work: string, defects: readonly OpenDefect[]): Situation['work'] {
  const done = { kind: 0.97, workable: 0.4, unknown: 0.9, any: 0.6 }[mood];
  const standing = dice.chance(done)
    ? { doneAt: AT }
    : dice.of([{}, {}, { possible: true }, { possible: null }, { possible: false }]);
  if (Object.keys(standing).length === 0 && dice.chance(0.5)) return [];
  if (dice.chance(0.1)) return [{ work, ...standing }];
  return defects.map(({ id }) => ({ work, defect: id, ...standing }));
}

function drawJudgement(
  dice: Dice,
  mood: Mood,
  judgement: string,
  role: 'commander' | 'maintenance-control',
): Situation['judgements'] {
  if (dice.chance(mood === 'unknown' ? 0.15 : mood === 'any' ? 0.1 : 0.02)) return [];
  const accepted = !dice.chance(mood === 'any' ? 0.15 : 0.03);
  return [{ judgement, accepted, by: role === 'commander' ? 'Ada Bright' : 'Ben Holt', role, at: AT }];
}
