import type { Procedure } from '#mel';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DefectLife } from '../defect-life.js';
import { defer } from '../deferring/defer.js';
import { signProcedure, type SignProcedure } from '../deferring/sign-procedure.js';
import { transfer } from '../deferring/transfer.js';
import { context, deferredAs, refusalOf, signed, writtenUp, goneOver } from '../invented.fixture.js';
import { fitPlacard } from '../leaving/fit-placard.js';
import { removePlacard } from '../leaving/remove-placard.js';
import { undoLeft } from '../leaving/undo.js';
import { rectify } from '../rectifying/rectify.js';
import { release } from '../rectifying/release.js';
import { proceed } from '../replay.js';
import { mayDispatch, type UseBefore } from './may-dispatch.js';

const RECORDED = '2026-01-26T10:00Z';
const at = '2026-01-26T11:00Z';
const by = signed('tech', at);
const leaving = (offBlockAt: string, id = 'F1') => ({ id, offBlockAt, onBlockAt: '2026-12-31T00:00Z' });
const codes = (life: DefectLife, flight = leaving('2026-01-26T12:00Z'), use: UseBefore = {}): string[] =>
  mayDispatch(life, flight, use).because.map(({ code }) => code);

describe('no dispatch past the deadline', () => {
  it('lets a flight leave in the last minute and none after it (I-45 sense, DERIVED)', () => {
    const life = deferredAs({ category: 'B' }, RECORDED);
    expect(codes(life, leaving('2026-01-29T23:59:59Z'))).toEqual([]);
    expect(codes(life, leaving('2026-01-30T00:00Z'))).toEqual(['past-the-deadline']);
  });

  it('agrees with day arithmetic for any log time, category and off-block time', () => {
    const days = { B: 3, C: 10, D: 120 } as const;
    const minute = fc.integer({ min: 0, max: 60 * 24 * 200 });
    fc.assert(
      fc.property(fc.constantFrom('B', 'C', 'D'), minute, minute, (category, recorded, after) => {
        const start = Date.UTC(2026, 0, 1) + recorded * 60_000;
        const offBlock = start + after * 60_000;
        const life = deferredAs({ category }, new Date(start).toISOString());
        const allowed = Math.floor(offBlock / 86_400_000) - Math.floor(start / 86_400_000) <= days[category];
        expect(mayDispatch(life, leaving(new Date(offBlock).toISOString())).may).toBe(allowed);
      }),
    );
  });

  it('counts flights: of 4, the fourth may leave and the fifth may not (story 4, I-18, DERIVED)', () => {
    const life = deferredAs({ category: 'A', interval: '4 flights' }, RECORDED);
    expect(codes(life, leaving('2026-02-20T12:00Z'), { used: { flights: 3 } })).toEqual([]);
    expect(codes(life, leaving('2026-02-20T12:00Z'), { used: { flights: 4 } })).toEqual(['past-the-deadline']);
    expect(codes(life, leaving('2026-02-20T12:00Z'))).toEqual(['past-the-deadline']);
  });

  it('keeps to the last instant of a document, at departure or at arrival by setting', () => {
    const written = writtenUp(RECORDED);
    const basis = {
      kind: 'design-approval' as const,
      reference: 'DA-7',
      issuedBy: 'design organisation',
      limit: '30 flights',
      conditions: [],
      until: '2026-02-01T00:00Z',
    };
    const life = proceed(written, defer(written, { id: 'd', by, basis }, context(at)));
    const flight = { id: 'F', offBlockAt: '2026-01-31T23:00Z', onBlockAt: '2026-02-01T01:00Z' };
    expect(codes(life, flight)).toEqual([]);
    expect(codes(life, flight, { counting: { expiryInFlight: 'arrival-inside' } })).toEqual(['past-the-deadline']);
    expect(codes(life, leaving('2026-02-01T00:00Z'))).toEqual(['past-the-deadline']);
    expect(
      mayDispatch(
        life,
        { id: 'F', offBlockAt: flight.offBlockAt },
        { counting: { expiryInFlight: 'arrival-inside' } },
      ).may,
    ).toBe(false);
  });

  it('refuses a time that is none', () => {
    expect(refusalOf(() => mayDispatch(deferredAs({}, RECORDED), leaving('tomorrow'))).code).toBe(
      'interval-cannot-be-computed',
    );
  });
});

describe('what else keeps a flight from leaving', () => {
  it('is an unanswered write-up', () => {
    expect(codes(writtenUp(RECORDED))).toEqual(['unanswered']);
  });

  it('is work that is not released, also under a deferral', () => {
    const life = deferredAs({}, RECORDED);
    const work = { id: 'w', by, workDone: 'opened', reference: 'AMM', complete: true };
    const open = proceed(life, rectify(life, work, context(at)));
    expect(codes(open)).toEqual(['open-work']);
    const seen = goneOver(open, by, at);
    const closed = proceed(seen, release(seen, { id: 'r', by, outcome: 'closed' }, context(at)));
    expect(codes(closed, leaving('2030-01-01T00:00Z'))).toEqual([]);
  });

  it('is a row that does not name the unit that is failed after a swap', () => {
    const life = deferredAs({ covers: ['1'] }, RECORDED);
    const swap = {
      id: 't',
      by,
      fromUnit: '1',
      toUnit: '2',
      parts: [],
      reason: 'x',
      moved: [],
      others: [],
      installed: ['1', '2'],
    };
    expect(codes(proceed(life, transfer(life, swap, context(at))))).toEqual(['row-not-for-this-unit']);
  });
});

describe('work that the row owes', () => {
  const withProcedure = (over: Partial<Procedure> = {}): DefectLife =>
    deferredAs({ procedures: [{ id: 'M1', kind: 'M', text: 'Deactivate.', ...over }] }, RECORDED);
  const sign = (life: DefectLife, over: Partial<SignProcedure> = {}): DefectLife =>
    proceed(life, signProcedure(life, { id: 'm1', by, work: '22-10-01/1/M1', ...over }, context(at)));

  it('is a procedure that nobody signed (D-03, SEEN-Q)', () => {
    expect(codes(withProcedure())).toEqual(['procedure-not-signed']);
    expect(codes(sign(withProcedure()))).toEqual([]);
  });

  it('is owed anew for each departure, and good only for the flight it was signed for (V-26, V-27)', () => {
    const life = withProcedure({ repeat: 'each-departure' });
    expect(codes(sign(life))).toEqual(['procedure-not-signed']);
    expect(codes(sign(life, { forFlight: 'F1' }))).toEqual([]);
    expect(codes(sign(life, { forFlight: 'F0' }))).toEqual(['procedure-not-signed']);
  });

  it('is owed anew each flight-day, and good until its day ends (V-16, DERIVED)', () => {
    const life = withProcedure({ repeat: 'each-flight-day' });
    expect(codes(sign(life))).toEqual(['procedure-not-signed']);
    const today = sign(life, { validUntil: '2026-01-27T00:00Z' });
    expect(codes(today, leaving('2026-01-26T23:59Z'))).toEqual([]);
    expect(codes(today, leaving('2026-01-27T00:00Z'))).toEqual(['procedure-not-signed']);
  });

  it('is not owed before the first flight where it follows that', () => {
    expect(codes(withProcedure({ repeat: { afterFirstFlightThenEvery: '100 flight-hours' } }))).toEqual([]);
  });

  it('is owed again once something that it left on the aircraft was undone', () => {
    const life = withProcedure({ leaves: [{ kind: 'breaker', where: 'P11-C4', undo: 'push in' }] });
    const item = { id: 'b', kind: 'breaker' as const, where: 'P11-C4', tag: '22', undo: 'push in' };
    const done = sign(life, { leaves: [item] });
    expect(codes(done)).toEqual([]);
    expect(codes(proceed(done, undoLeft(done, { id: 'u', by, items: ['b'] }, context(at))))).toEqual([
      'procedure-not-signed',
    ]);
  });

  it('is the placard of the row, with its text, as long as it is fitted (D-04, SEEN-Q)', () => {
    const life = deferredAs({ placard: { text: 'AP 1 INOP', position: 'P5' } }, RECORDED);
    const fit = (text: string): DefectLife =>
      proceed(life, fitPlacard(life, { id: 'p', by, text, position: 'P5', tag: '9' }, context(at)));
    expect(codes(life)).toEqual(['placard-not-fitted']);
    expect(codes(fit('INOP'))).toEqual(['placard-not-fitted']);
    const fitted = fit('AP 1 INOP');
    expect(codes(fitted)).toEqual([]);
    expect(codes(proceed(fitted, removePlacard(fitted, { id: 'x', by, item: 'p' }, context(at))))).toEqual([
      'placard-not-fitted',
    ]);
  });
});
