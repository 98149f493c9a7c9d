/** What holds of every verdict, and no more than that: beside each property stands the case that would break a stronger one. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boundsOf, judge, leastToFix, propose } from '#dispatch';
import { loadMel, type Mel, type Row } from '#mel';
import { entry, melOf, situationOf } from '../support/small-mel.js';
import { needsItsPartner, takenAlong, without, withWorkNamed } from './closed-defect.js';
import { drawCases, type DrawnCase } from './verdicts.draw.js';
import { RANK } from './verdicts.enumeration.js';

const CELLS: Record<string, (string | number | boolean)[]> = {
  'flight.rvsm': [true, false],
  'flight.icing': ['none', 'forecast', 'known'],
  'flight.etopsMinutes': [0, 60, 120, 121, 180],
};

/** Calls back with each case of so many MELs, five to a MEL. */
function ofEach(mels: number, check: (one: DrawnCase) => void): void {
  fc.assert(
    fc.property(fc.noBias(fc.nat()), (seed) => {
      for (const one of drawCases(seed, 5)) check(one);
    }),
    { numRuns: mels, endOnFailure: true },
  );
}

describe('information', () => {
  it('one fact made known never lowers lo and never raises hi of a flight', () => {
    const seen = { asked: 0, raised: 0, lowered: 0 };
    ofEach(250, ({ mel, situation }) => {
      const unknown = Object.keys(CELLS).filter((key) => situation.facts[key]?.value === null);
      if (unknown.length === 0) return;
      const before = boundsOf(mel, situation);
      for (const key of unknown) {
        for (const value of CELLS[key]!) {
          const after = boundsOf(mel, { ...situation, facts: { ...situation.facts, [key]: { value } } });
          expect(RANK[after.lo]).toBeGreaterThanOrEqual(RANK[before.lo]);
          expect(RANK[after.hi]).toBeLessThanOrEqual(RANK[before.hi]);
          seen.asked += 1;
          if (after.lo !== before.lo) seen.raised += 1;
          if (after.hi !== before.hi) seen.lowered += 1;
        }
      }
    });
    expect(Math.min(...Object.values(seen)), JSON.stringify(seen)).toBeGreaterThan(50);
  });
});

describe('repair', () => {
  it('closing a defect, with all else held, lowers neither lo nor hi of a flight', () => {
    const seen = { closed: 0, raisedLo: 0, raisedHi: 0, takenAlong: 0 };
    ofEach(600, ({ mel, situation: drawn }) => {
      if (needsItsPartner(mel)) return;
      const situation = withWorkNamed(drawn);
      const taken = takenAlong(mel);
      const before = boundsOf(mel, situation);
      for (const { id, entry: number, units } of situation.defects) {
        const after = boundsOf(mel, without(situation, id));
        const isTakenAlong = taken.has(number ?? '');
        expect(RANK[after.lo]).toBeGreaterThanOrEqual(RANK[before.lo]);
        // What is false without this exception has its witness below: nobody knew which unit it was, and a row takes it.
        if (units.length === 1 || !isTakenAlong) expect(RANK[after.hi]).toBeGreaterThanOrEqual(RANK[before.hi]);
        seen.closed += 1;
        if (after.lo !== before.lo) seen.raisedLo += 1;
        if (RANK[after.hi] > RANK[before.hi]) seen.raisedHi += 1;
        if (isTakenAlong) seen.takenAlong += 1;
      }
    });
    expect(Math.min(...Object.values(seen)), JSON.stringify(seen)).toBeGreaterThan(50);
  });

  it('but a symmetrical pair is made worse when one of the two is rectified', async () => {
    // Published: T1 27-64-01 1), one symmetrical pair of spoilers retracted. SEEN-Q; here DERIVED.
    const pair = { numberRequired: 0, needsDown: [{ entry: '27-64', units: ['L', 'R'] }] };
    const mel = melOf(entry('27-64', [pair], ['L', 'R']));
    const both = situationOf([
      { entry: '27-64', units: ['L'] },
      { entry: '27-64', units: ['R'] },
    ]);
    expect((await judge(mel, both)).verdict).toBe('may-fly');
    expect((await judge(mel, without(both, 'D2'))).verdict).toBe('may-not-fly');
    // It is listed nowhere: nothing needs fixing while both are retracted, and of one alone only itself.
    expect(leastToFix(mel, both).repairs).toEqual([]);
    expect(leastToFix(mel, without(both, 'D2')).repairs.map(({ defects }) => defects)).toEqual([['D1']]);
  });

  it('and what is possible sinks when an item of which nobody knew which unit is closed and still taken along', () => {
    const mel = melOf(
      entry('a', [{ covers: ['2'] }], ['1', '2']),
      entry('b', [{ consideredInoperative: [{ entry: 'a' }] }]),
    );
    const open = situationOf([{ entry: 'a', units: ['1', '2'] }, { entry: 'b' }]);
    expect(boundsOf(mel, open)).toMatchObject({ lo: 'may-not-fly', hi: 'may-fly' });
    expect(boundsOf(mel, without(open, 'D1'))).toMatchObject({ lo: 'may-not-fly', hi: 'may-not-fly' });
  });
});

describe('notes', () => {
  /** Every row with a note more, and with nothing of its notes but the functions that they say are lost. */
  const noted = ({ content }: Mel, notesOf: (row: Row) => Row['notes']): Mel => {
    const entries = content.entries.map((one) => ({
      ...one,
      subEntries: one.subEntries.map((sub) => ({
        ...sub,
        rows: sub.rows.map(({ notes: _notes, ...row }, at) => {
          const notes = notesOf(sub.rows[at]!) ?? [];
          return { ...row, ...(notes.length === 0 ? {} : { notes }) };
        }),
      })),
    }));
    const loaded = loadMel({ ...content, entries }, 'noted');
    if ('errors' in loaded) throw new Error(JSON.stringify(loaded.errors));
    return loaded.mel;
  };
  const more = ({ notes = [] }: Row): Row['notes'] => [...notes, { text: 'Any mode that works may be used.' }];
  const fewer = ({ notes = [] }: Row): Row['notes'] => notes.filter(({ lost }) => lost !== undefined);

  /** The bytes of an answer without the notes that are read to whoever judges the combination. */
  const bytes = (answer: unknown): string =>
    JSON.stringify(answer, (key, value: unknown) =>
      key === 'found' ? (value as string[]).filter((sentence) => !sentence.startsWith('Note to ')) : value,
    );

  it('that are taken away change only notes, unless they say that a function is lost', async () => {
    const seeds = fc.sample(fc.noBias(fc.nat()), { numRuns: 25, seed: 11 });
    for (const { mel, situation } of seeds.flatMap((seed) => drawCases(seed, 3))) {
      const [one, two] = [noted(mel, more), noted(mel, fewer)];
      expect(bytes(await judge(two, situation))).toBe(bytes(await judge(one, situation)));
      expect(bytes(await propose(two, situation))).toBe(bytes(await propose(one, situation)));
    }
    // A function that a NOTE says is lost is considered inoperative, and that is more than a note.
    const lost = melOf(entry('a', [{ notes: [{ text: 'b is lost too', lost: [{ entry: 'b' }] }] }]), entry('b', []));
    expect((await judge(lost, situationOf([{ entry: 'a' }]))).verdict).toBe('may-not-fly');
    expect(
      (
        await judge(
          noted(lost, () => []),
          situationOf([{ entry: 'a' }]),
        )
      ).verdict,
    ).toBe('may-fly');
  });
});
