/**
 * Thousands of random shifts of work on one aircraft by people of whom some may sign and some may not. After every command,
 * admitted or refused, the lib's answer is held against a naive account of the physical things and of the pens.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Hangar } from './hangar.fixture.js';
import { shiftsWatchedBy } from './work.fixture.js';

const SHIFTS = 1200;

function shifts(watch: (hangar: Hangar) => void): fc.IProperty<unknown> {
  return fc.property(fc.commands(shiftsWatchedBy(watch), { maxCommands: 50, size: 'max' }), (commands) => {
    const hangar = new Hangar();
    hangar.writeUp();
    fc.modelRun(() => ({ model: {}, real: hangar }), commands as Iterable<fc.Command<object, Hangar>>);
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
