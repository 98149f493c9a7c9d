/**
 * Thousands of random shifts of work on one aircraft by people of whom some may sign and some may not. After every command,
 * admitted or refused, the lib's answer is held against a naive account of the physical things and of the pens.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ALL, good, type Pen, PEOPLE } from './crew.fixture.js';
import { Hangar } from './hangar.fixture.js';
import { AIRCRAFT } from '../invented.fixture.js';
import type { LicenceCategory } from '../people.js';
import { DOCUMENTS, DOINGS, KINDS, PLACES, type Told } from './work.fixture.js';

const SHIFTS = 800;

type Watch = (hangar: Hangar) => void;

const minute = fc.integer({ min: 0, max: 600 });

/** What can be wrong with a signature, one thing or several. */
const wrongs = fc.record(
  {
    holder: fc.constantFrom(...PEOPLE),
    operator: fc.constantFrom(AIRCRAFT.operator, 'Other Air'),
    type: fc.constantFrom(AIRCRAFT.type, 'INV-2'),
    privileges: fc.subarray(ALL),
    from: minute,
    until: minute,
    revoked: minute,
    early: fc.integer({ min: -30, max: 120 }),
    statement: fc.constantFrom('Done.', ' '),
  },
  { requiredKeys: [] },
);

/** Mostly somebody who may. */
const pens: fc.Arbitrary<Pen> = fc
  .tuple(
    fc.constantFrom(...PEOPLE),
    fc.option(wrongs, { freq: 2 }),
    fc.constantFrom<LicenceCategory[]>(['B1'], ['B1'], ['B1'], ['A']),
  )
  .map(([person, wrong, categories]) => ({
    ...good(person),
    ...wrong,
    categories,
  }));

const told: fc.Arbitrary<Told> = fc.record({
  index: fc.nat(4),
  to: fc.nat(4),
  pen: pens,
  thing: fc.record({
    kind: fc.constantFrom(...KINDS),
    where: fc.constantFrom(...PLACES),
    tag: fc.constantFrom('1', '2', '3'),
  }),
  document: fc.constantFrom(...DOCUMENTS),
  minutes: fc.integer({ min: 1, max: 90 }),
  together: fc.boolean(),
});

const commands = (watch: Watch): fc.Arbitrary<fc.Command<object, Hangar>>[] =>
  Object.entries(DOINGS).map(([name, doing]) =>
    told.map((said) => ({
      check: () => true,
      run: (_: object, hangar: Hangar) => {
        doing(hangar, said);
        watch(hangar);
      },
      toString: () => `${name} ${JSON.stringify(said)}`,
    })),
  );

function shifts(watch: Watch): fc.IProperty<unknown> {
  return fc.property(fc.commands(commands(watch), { maxCommands: 50, size: 'max' }), (chosen) => {
    const hangar = new Hangar();
    hangar.writeUp();
    fc.modelRun(() => ({ model: {}, real: hangar }), chosen);
  });
}

const RUNS = { numRuns: SHIFTS, unbiased: true };

describe('random shifts of work on an aircraft', () => {
  it('never leave it releasable with a thing on it that nobody owns, and know every thing that is on it', () => {
    fc.assert(
      shifts((hangar) => {
        const lost = hangar.orphans();
        expect(hangar.gates().orphans).toHaveLength(lost.length);
        const kept = new Set(hangar.lines().map(({ id }) => id));
        expect(kept).toEqual(new Set(hangar.things.keys()));
      }),
      RUNS,
    );
  });

  it('never accept a signature of somebody unqualified, expired or of the wrong scope', () => {
    // Thrown by the commands themselves, which know the pen.
    const hangars = new Set<Hangar>();
    fc.assert(
      shifts((hangar) => hangars.add(hangar)),
      RUNS,
    );
    const releases = [...hangars].reduce((sum, { releases: some }) => sum + some, 0);
    const admitted = [...hangars].reduce((sum, { admitted: some }) => sum + some, 0);
    expect({ releases: releases > 20, admitted: admitted > 2000 }).toEqual({ releases: true, admitted: true });
  });

  it('never fit the same thing twice, and fly with no tool that is not returned', () => {
    fc.assert(
      shifts((hangar) => {
        const seen = [...hangar.things.values()].map(({ item: { kind, where, tag } }) =>
          kind === 'tool' ? `${kind} ${tag}` : `${kind} ${where}`,
        );
        expect(new Set(seen).size).toBe(seen.length);
        const tools = [...hangar.things.values()].filter(({ item }) => item.kind === 'tool').length;
        expect(hangar.gates().openWork.filter((line) => line.startsWith('not returned'))).toHaveLength(tools);
      }),
      { ...RUNS, numRuns: 400 },
    );
  });
});
