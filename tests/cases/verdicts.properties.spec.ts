/** What holds of every verdict, and no more than that: beside each property stands the case that would break a stronger one. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boundsOf, judge, leastToFix, propose, type Situation } from '#dispatch';
import { loadMel, type EntryRef, type Mel, type Row } from '#mel';
import { entry, melOf, situationOf } from '../support/small-mel.js';
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

const without = (situation: Situation, ...ids: string[]): Situation => ({
  ...situation,
  defects: situation.defects.filter(({ id }) => !ids.includes(id)),
});

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
  const takes = ({ consideredInoperative = [], notes = [] }: Row): EntryRef[] => [
    ...consideredInoperative,
    ...notes.flatMap(({ lost = [] }) => lost),
  ];

  it('closing an item that no row calls considered inoperative lowers neither, if no row needs its partner down', () => {
    const seen = { closed: 0, better: 0 };
    ofEach(500, ({ mel, situation }) => {
      const rows = mel.entries.flatMap(({ subEntries }) => subEntries.flatMap((sub) => sub.rows));
      if (rows.some(({ needsDown }) => needsDown !== undefined)) return;
      const taken = new Set(rows.flatMap(takes).map((ref) => ref.entry));
      // A record that names no defect tells of another piece of work once one defect fewer is under its row.
      const work = situation.work.filter(({ defect }) => defect !== undefined);
      const before = boundsOf(mel, { ...situation, work });
      for (const { id, entry: number } of situation.defects) {
        if (taken.has(number ?? '')) continue;
        const after = boundsOf(mel, { ...without(situation, id), work });
        expect(RANK[after.lo]).toBeGreaterThanOrEqual(RANK[before.lo]);
        expect(RANK[after.hi]).toBeGreaterThanOrEqual(RANK[before.hi]);
        seen.closed += 1;
        if (after.lo !== before.lo) seen.better += 1;
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
