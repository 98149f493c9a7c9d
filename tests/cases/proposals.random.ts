/** Random cases for the proposal: those of the verdict, with more defects and with work that names no defect. */
import fc from 'fast-check';
import type { OpenDefect, Situation } from '#dispatch';
import type { Mel } from '#mel';
import { randomCase, type RandomCase } from './verdicts.random.js';

interface Change {
  more: Omit<OpenDefect, 'id'>[];
  unnamed: boolean[];
  isKind: boolean;
}

const none = fc.constant<Change['more']>([]);

export const proposalCase: fc.Arbitrary<RandomCase> = randomCase.chain(({ mel, situation }) =>
  fc
    .record<Change>({
      more: fc.oneof(
        none,
        none,
        defectOf(mel).map((one) => [one]),
      ),
      unnamed: fc.array(fc.boolean(), { minLength: 4, maxLength: 4 }),
      isKind: fc.integer({ min: 0, max: 4 }).map((n) => n > 0),
    })
    .map((change) => ({ mel, situation: widened(situation, change) })),
);

function defectOf(mel: Mel): fc.Arbitrary<Omit<OpenDefect, 'id'>> {
  return fc.constantFrom(...mel.entries).chain(({ number, subEntries }) => {
    const { units, rows } = subEntries[0]!;
    const ids = rows.map(({ id }) => id);
    return fc.record({
      entry: fc.constant(number),
      units: fc.constantFrom(...units).map((unit) => [unit]),
      row: fc.constantFrom(null, ...ids, ...ids, ...ids, ...ids),
      signed: fc.integer({ min: 0, max: 9 }).map((n) => n > 0),
      recordedAt: fc.constant('2026-03-09T12:00Z'),
    });
  });
}

/** In a kind case all work is done, and everybody accepts. Some records of work lose the name of their defect. */
function widened(situation: Situation, { more, unnamed, isKind }: Change): Situation {
  const { at, gates, directives, judgements } = situation;
  const defects = [...situation.defects, ...more.map((defect): OpenDefect => ({ ...defect, id: 'E0' }))];
  const work = situation.work.flatMap(({ defect, ...rest }, index) => {
    const known = isKind ? { work: rest.work, doneAt: at } : rest;
    if (unnamed[index % 4] === true || defect === undefined) return [known];
    return isKind ? defects.map(({ id }) => ({ ...known, defect: id })) : [{ ...known, defect }];
  });
  if (!isKind) return { ...situation, defects, work };
  return {
    ...situation,
    defects: defects.map((defect) => ({ ...defect, signed: defect.signed || defect.row !== null })),
    facts: unnamed[1] === true || unnamed[2] === true ? KIND_FACTS : situation.facts,
    work,
    directives: directives.slice(1),
    gates: { ...gates, unanswered: [] },
    judgements: judgements.map((one) => ({ ...one, accepted: true })),
  };
}

const KIND_FACTS: Situation['facts'] = {
  'flight.rvsm': { value: false },
  'flight.icing': { value: 'none' },
  'flight.etopsMinutes': { value: 0 },
};
