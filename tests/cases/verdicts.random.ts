/** Random small MELs and situations on them, for the properties of the verdict's meaning. */
import fc from 'fast-check';
import type { Situation } from '#dispatch';
import { loadMel, type Condition, type ConditionLeaf, type EntryRef, type Mel } from '#mel';

export interface RandomCase {
  mel: Mel;
  situation: Situation;
}

const WORKS = ['M1', 'placard'];

interface Shape {
  units: string[];
  rows: string[];
  twoConfigurations: boolean;
}

const shapes = fc.array(
  fc.record<Shape>({
    units: fc.constantFrom(['1'], ['1', '2'], ['1', '2']),
    rows: fc.constantFrom(['a'], ['a'], ['a', 'b']),
    twoConfigurations: fc.integer({ min: 0, max: 5 }).map((n) => n === 0),
  }),
  { minLength: 2, maxLength: 4 },
);

const numberOf = (index: number): string => `e${index}`;

const flightLeaf: fc.Arbitrary<ConditionLeaf> = fc.constantFrom<ConditionLeaf>(
  { fact: 'flight.rvsm', operator: 'equal', value: false },
  { fact: 'flight.icing', operator: 'in', value: ['none', 'forecast'] },
  { fact: 'flight.icing', operator: 'notEqual', value: 'known' },
  { fact: 'flight.etopsMinutes', operator: 'lessThanInclusive', value: 120 },
  { fact: 'flight.etopsMinutes', operator: 'equal', value: 0 },
);

/** What may be denied: true of the usual flight only when denied. */
const deniedLeaf: fc.Arbitrary<ConditionLeaf> = fc.constantFrom<ConditionLeaf>(
  { fact: 'flight.rvsm', operator: 'equal', value: true },
  { fact: 'flight.icing', operator: 'in', value: ['known', 'forecast'] },
  { fact: 'flight.etopsMinutes', operator: 'equal', value: 180 },
);

/** Leaves that stand only where more truth helps; the others are about the flight. */
function leaf(all: Shape[]): fc.Arbitrary<ConditionLeaf> {
  const entry = fc.nat(all.length - 1).chain((index) =>
    fc.constantFrom('entry.up', 'entry.notFailed').chain((fact) =>
      fc.integer({ min: 1, max: all[index]!.units.length }).map((value): ConditionLeaf => ({
        fact,
        operator: 'greaterThanInclusive',
        value,
        params: { entry: numberOf(index) },
      })),
    ),
  );
  const unit = fc.nat(all.length - 1).chain((index) =>
    fc.constantFrom(...all[index]!.units).map((one): ConditionLeaf => ({
      fact: 'entry.up',
      operator: 'greaterThanInclusive',
      value: 1,
      params: { entry: numberOf(index), units: [one] },
    })),
  );
  const of = (fact: string, param: 'work' | 'judgement', id: string) =>
    fc.nat(all.length - 1).map((index): ConditionLeaf => ({
      fact,
      operator: 'equal',
      value: true,
      params: { [param]: `${numberOf(index)}/a/${id}` },
    }));
  return fc.oneof(
    { weight: 4, arbitrary: flightLeaf },
    { weight: 3, arbitrary: entry },
    { weight: 2, arbitrary: unit },
    { weight: 1, arbitrary: of('work.done', 'work', 'M1') },
    { weight: 1, arbitrary: of('judgement.accepted', 'judgement', 'J1') },
  );
}

function condition(all: Shape[]): fc.Arbitrary<Condition> {
  const flightOnly: fc.Arbitrary<Condition> = fc.oneof<fc.Arbitrary<Condition>[]>(
    deniedLeaf,
    fc.array(deniedLeaf, { minLength: 1, maxLength: 2 }).map((any) => ({ any })),
  );
  return fc.letrec<{ tree: Condition }>((tie) => ({
    tree: fc.oneof(
      { maxDepth: 2, withCrossShrink: true },
      leaf(all),
      fc.array(tie('tree'), { minLength: 1, maxLength: 3 }).map((parts) => ({ all: parts })),
      fc.array(tie('tree'), { minLength: 1, maxLength: 3 }).map((parts) => ({ any: parts })),
      flightOnly.map((not) => ({ not })),
    ),
  })).tree;
}

const rarely = <T>(value: fc.Arbitrary<T>, oneIn: number): fc.Arbitrary<T | undefined> =>
  fc.oneof({ weight: 1, arbitrary: value }, { weight: oneIn - 1, arbitrary: fc.constant(undefined) });

function entryRef(all: Shape[]): fc.Arbitrary<EntryRef> {
  return fc
    .nat(all.length - 1)
    .chain((index) =>
      rarely(fc.subarray(all[index]!.units, { minLength: 1 }), 2).map((units) =>
        units === undefined ? { entry: numberOf(index) } : { entry: numberOf(index), units },
      ),
    );
}

/** Every row asks for J1 and owes M1, so that the keys of work and judgement leaves exist, but row b owes nothing. */
function row(all: Shape[], index: number, id: string): fc.Arbitrary<object> {
  const { units } = all[index]!;
  return fc
    .record({
      numberRequired: fc.integer({ min: 0, max: units.length }).map((n) => n % units.length),
      provisos: fc.array(condition(all), { maxLength: 2 }),
      considered: rarely(fc.array(entryRef(all), { minLength: 1, maxLength: 2 }), 3).map((refs) => refs ?? []),
      lost: rarely(entryRef(all), 6),
      needsDown: rarely(entryRef(all), 12),
      covers: rarely(fc.subarray(units, { minLength: 1 }), 4),
      incomplete: rarely(fc.constant('part of it is not held'), 12),
      placard: rarely(fc.constant({ text: 'INOP', position: 'panel' }), 3),
    })
    .map(({ numberRequired, provisos, considered, lost, needsDown, covers, incomplete, placard }) => ({
      id,
      category: 'C',
      numberRequired,
      remarks: 'a row',
      ...(provisos.length === 0
        ? {}
        : { provisos: provisos.map((when, at) => ({ id: `p${at}`, text: `proviso ${at}`, when })) }),
      ...(considered.length === 0 ? {} : { consideredInoperative: considered }),
      ...(lost === undefined ? {} : { notes: [{ text: 'a note', lost: [lost] }] }),
      ...(needsDown === undefined ? {} : { needsDown: [needsDown] }),
      ...(covers === undefined ? {} : { covers }),
      ...(incomplete === undefined ? {} : { incomplete }),
      ...(placard === undefined ? {} : { placard }),
      ...(id === 'b'
        ? {}
        : {
            procedures: [{ id: 'M1', kind: 'M', text: 'do it', minutes: 10 }],
            judgements: [{ id: 'J1', question: 'is it good?', by: 'commander' }],
          }),
    }));
}

function subEntry(all: Shape[], index: number, id: string, code: string | null): fc.Arbitrary<object> {
  const { units, rows } = all[index]!;
  return fc
    .tuple(...rows.map((one) => row(all, index, one)))
    .map((made) => ({ id, units, rows: made, ...(code === null ? {} : { appliesTo: { configurations: [code] } }) }));
}

function mel(all: Shape[]): fc.Arbitrary<Mel> {
  const entries = all.map(({ twoConfigurations }, index) => {
    const made = twoConfigurations
      ? [subEntry(all, index, 'old', 'OLD'), subEntry(all, index, 'new', 'NEW')]
      : [subEntry(all, index, 'all', null)];
    return fc
      .tuple(...made)
      .map((subEntries) => ({ number: numberOf(index), title: `item ${index}`, chapter: '30', subEntries }));
  });
  return fc.tuple(...entries).map((made) => {
    const content = {
      format: 'proviso-mel/1',
      document: 'random',
      operator: 'nobody',
      aircraftType: 'X',
      revision: '1',
      effectiveOn: '2026-01-01',
      entries: made,
    };
    const loaded = loadMel(content, 'random');
    if ('errors' in loaded) throw new Error(JSON.stringify(loaded.errors));
    return loaded.mel;
  });
}

const facts = fc.record({
  'flight.rvsm': fc.constantFrom(true, false, false, false, null),
  'flight.icing': fc.constantFrom('none', 'none', 'none', 'forecast', 'known', null),
  'flight.etopsMinutes': fc.constantFrom(0, 0, 0, 120, 180, null),
});

const DONE = Array<string>(20).fill('done');
const YES = Array<string>(14).fill('yes');
const AT = '2026-03-10T06:00Z';

function situation(all: Shape[]): fc.Arbitrary<Situation> {
  const defect = fc.nat(all.length - 1).chain((index) =>
    fc.record({
      entry: fc.constant(numberOf(index)),
      units: fc.oneof(
        { weight: 3, arbitrary: fc.constantFrom(...all[index]!.units).map((unit) => [unit]) },
        { weight: 1, arbitrary: fc.constant(all[index]!.units) },
      ),
      row: fc.oneof(
        { weight: 14, arbitrary: fc.constantFrom(...all[index]!.rows) },
        { weight: 1, arbitrary: fc.constant(null) },
      ),
      signed: fc.integer({ min: 0, max: 9 }).map((n) => n > 1),
    }),
  );
  const works = all.flatMap((_, index) => WORKS.map((id) => `${numberOf(index)}/a/${id}`));
  const keys = all.map((_, index) => `${numberOf(index)}/a/J1`);
  const state = fc.constantFrom(...DONE, 'absent', 'absent', 'possible', 'possible', 'unknown', 'impossible');
  return fc
    .record({
      defects: fc.array(defect, { minLength: 1, maxLength: 2 }),
      facts,
      works: fc.tuple(...works.map((work) => state.map((is) => ({ work, is })))),
      judgements: fc.tuple(
        ...keys.map((judgement) => fc.constantFrom(...YES, 'no', 'absent').map((is) => ({ judgement, is }))),
      ),
      configuration: fc.constantFrom<(string[] | null)[]>(['OLD'], ['NEW'], null),
      directive: rarely(fc.nat(all.length - 1), 25),
      unanswered: rarely(fc.constant<string[]>(['sheet 7']), 25),
      combination: fc.boolean(),
      accepted: fc.constantFrom(true, true, false, null),
    })
    .map((made): Situation => ({
      at: AT,
      tzdb: '2026a',
      aircraft: { registration: 'Q-RND', type: 'X', configuration: made.configuration, serial: 1 },
      defects: made.defects.map((one, at) => ({ ...one, id: `D${at}`, recordedAt: '2026-03-09T12:00Z' })),
      flight: { id: 'F1', from: 'Northmere', to: 'Saltby', offBlockAt: '2026-03-10T08:00Z' },
      facts: Object.fromEntries(Object.entries(made.facts).map(([key, value]) => [key, { value }])),
      work: made.works.flatMap(({ work, is }) => {
        if (is === 'absent') return [];
        // Names every defect, so that two of the same row are both served.
        return made.defects.map((_, at) =>
          is === 'done'
            ? { work, defect: `D${at}`, doneAt: AT }
            : { work, defect: `D${at}`, possible: POSSIBLE[is]! },
        );
      }),
      judgements: [
        ...made.judgements.flatMap(({ judgement, is }) =>
          is === 'absent'
            ? []
            : [{ judgement, accepted: is === 'yes', by: 'Ada Bright', role: 'commander' as const, at: AT }],
        ),
        ...(made.accepted === null
          ? []
          : [
              {
                judgement: 'combination',
                accepted: made.accepted,
                by: 'Ben Holt',
                role: 'maintenance-control' as const,
                at: AT,
              },
            ]),
      ],
      directives: made.directive === undefined ? [] : [{ number: 'AD 1', entry: numberOf(made.directive) }],
      gates: { unanswered: made.unanswered ?? [], openWork: [], orphans: [] },
      settings: {
        base: 'UTC',
        expiryInFlight: 'departure-inside',
        combinationNeedsAcceptance: made.combination,
        budget: 10_000,
      },
    }));
}

const POSSIBLE: Record<string, boolean | null> = { possible: true, unknown: null, impossible: false };

export const randomCase: fc.Arbitrary<RandomCase> = shapes.chain((all) =>
  fc.record({ mel: mel(all), situation: situation(all) }),
);
