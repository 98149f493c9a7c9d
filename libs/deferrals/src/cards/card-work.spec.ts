/** Work by a card. 145.A.45(e); 145.A.48(a); 66.A.20(a); 14 CFR 121.371(c). The card is invented. */
import { describe, expect, it } from 'vitest';
import { aircraftGates } from '../flying/aircraft-gates.js';
import { context, deferredAs, goneOver, refusalOf, signed, writtenUp } from '../invented.fixture.js';
import { giveOver } from '../leaving/give-over.js';
import { undoLeft } from '../leaving/undo.js';
import { replay } from '../replay.js';
import { release } from '../rectifying/release.js';
import type { RefusalCode } from '../refusals.js';
import { signProcedure } from '../deferring/sign-procedure.js';
import { workOwed } from '../flying/work-owed.js';
import { Bench, card } from './cards.fixture.js';
import { missingOf } from './what-is-missing.js';

const started = () => new Bench(writtenUp('2026-01-26T10:00Z')).start();
const said = (act: () => unknown, code: RefusalCode): string => {
  const { message, next } = refusalOf(act, code);
  return `${message} ${next}`;
};

describe('a card done as it stands', () => {
  it('is signed once everything is done, becomes work on the defect, and its history plays again', () => {
    const on = started().until().sign();
    expect(on.life.cards[0]?.ended?.kind).toBe('card-signed');
    expect(on.life.left).toEqual([]);
    expect(on.life.work?.done).toMatchObject([
      {
        complete: true,
        reference: 'INV-AMM 29-11-31 task 4, revision 12',
        parts: [{ partNumber: 'S-1', certificate: 'B-7' }],
      },
    ]);
    expect(replay(on.life.acts)).toEqual(on.life);
  });

  it('keeps the aircraft on the ground from its start until it is signed', () => {
    const on = started();
    expect(aircraftGates([on.life], [], [], on.now).openWork).toEqual([
      'D1: Autopilot 1 disconnects by itself. (work card not signed: Change of the case-drain filter)',
    ]);
  });

  it('counts what it pulled as left on the aircraft until it is counted in', () => {
    const on = started().until('unlatch');
    expect(on.life.left).toMatchObject([{ kind: 'breaker', where: 'panel P2, A7', tag: 'C-22' }]);
    expect(on.until.call(started(), 'leak').life.left).toEqual([]);
  });
});

describe('what is counted out', () => {
  it('is counted in whole: one latch that is missing is named', () => {
    const on = started().until('latch');
    expect(said(() => on.step('latch', { kind: 'in', count: 3 }), 'count-differs')).toContain(
      '3 of 4 cowl latches latched; missing: 1 of cowl latches at left nacelle',
    );
    expect(refusalOf(() => started().until('unlatch').step('unlatch', { kind: 'out', count: 5 })).code).toBe(
      'count-differs',
    );
  });

  it('goes out and comes in by its number', () => {
    expect(refusalOf(() => started().step('pull', { kind: 'out', count: 1 })).code).toBe('text-missing');
    const on = started().until('reset');
    expect(said(() => on.step('reset', { kind: 'in', count: 1, number: 'C-23' }), 'number-differs')).toContain(
      'pump breaker at panel P2, A7 (C-22)',
    );
    expect(refusalOf(() => on.step('reset', { kind: 'in', count: 1 })).code).toBe('number-differs');
  });

  it('keeps the card from being signed, each thing by name and number', () => {
    const on = started().until('reset');
    expect(said(() => on.sign(), 'card-not-finished')).toContain(
      'still unlatched: 4 cowl latches at left nacelle; still pulled: pump breaker at panel P2, A7 (C-22); not done: step 7 "Run the pump and watch"; not done: step 8 ',
    );
  });

  it('keeps the card from being stopped', () => {
    const on = started().until('unlatch');
    expect(said(() => on.stop(), 'card-leaves-things')).toContain(
      'still pulled: pump breaker at panel P2, A7 (C-22). ',
    );
    const { life } = started().stop('wrong aircraft');
    expect([life.cards[0]?.ended?.kind, life.work]).toEqual(['card-stopped', null]);
    expect(aircraftGates([life], [], [], on.now).openWork).toEqual([]);
  });

  it('is counted in by its card alone, and neither undone nor given away elsewhere while the card is open', () => {
    const on = started().until('reset');
    const items = on.life.left.map(({ id }) => id);
    const by = signed('tech', on.now);
    const undo = () => undoLeft(on.life, { id: 'u', by, items }, context(on.now));
    expect(said(undo, 'counted-by-card')).toContain('Undo it by its step on that card.');
    const to = { kind: 'defect', defect: 'D2' } as const;
    const give = () => giveOver(on.life, { id: 'g', by, items, to, reason: 'needed' }, context(on.now));
    expect(refusalOf(give).code).toBe('counted-by-card');
    on.step('reset', { kind: 'in', count: 1, number: 'C-22' });
    expect(on.life.left).toEqual([]);
  });

  it('is not counted in where the card says that an earlier one left it, and none did', () => {
    const [, ...others] = card().accounts ?? [];
    const accounts = others.map((one) => ({ ...one, over: 'found' as const }));
    const steps = card().steps.filter(({ id }) => id === 'reset');
    const on = new Bench(writtenUp('2026-01-26T10:00Z')).start({ card: card({ accounts, steps }) });
    expect(said(() => on.step('reset', { kind: 'in', count: 1, number: 'C-22' }), 'nothing-of-it-left')).toContain(
      'Look at the aircraft',
    );
  });

  it('takes back that somebody went over the aircraft, a latch that is only counted too', () => {
    const on = started().until().sign().pass(1);
    on.life = goneOver(on.life, signed('tech', on.now), on.now);
    expect(on.life.work?.verified).not.toBeNull();
    const accounts = card().accounts?.slice(0, 1) ?? [];
    const steps = card().steps.filter(({ id }) => id === 'unlatch');
    on.start({ card: card({ id: 'more', accounts, steps }) }).step('unlatch', { kind: 'out', count: 4 });
    expect(on.life.work?.verified).toBeNull();
  });
});

describe('an independent inspection', () => {
  it('is never by one who did what is inspected', () => {
    expect(said(() => started().until('second').inspect('second', 'tech'), 'inspector-did-it')).toContain(
      'Ask a second qualified person',
    );
    const on = started().until('leak').step('leak', { kind: 'begun' }, 'second');
    on.pass(5)
      .step('leak', { kind: 'ran', readings: [{ id: 'case', value: 71, unit: 'C' }] })
      .step('leak', { kind: 'looked', findings: 'dry' });
    expect(refusalOf(() => on.inspect('second', 'second')).code).toBe('inspector-did-it');
    expect(() => on.inspect('second', 'third')).not.toThrow();
  });

  it('is by somebody who may inspect', () => {
    expect(
      refusalOf(() =>
        started()
          .until('second')
          .inspect('second', 'second', { scope: { privileges: ['sign-procedure'] } }),
      ).code,
    ).toBe('authorisation-does-not-cover');
  });
});

describe('the signature of a card', () => {
  const newer = { manual: 'INV-AMM', task: null, revision: '13', issuedOn: '2026-01-20' };
  const confirmation = (over: object = {}) => ({
    card: 'filter',
    wrote: '12',
    against: '13',
    by: signed('engineer', '2026-01-27T07:00Z', { scope: { privileges: ['confirm-card'] } }),
    ...over,
  });

  it('waits for a confirmation once a newer revision of the manual is recorded', () => {
    const on = started().until();
    expect(said(() => on.sign({ newerRevision: newer }), 'card-not-confirmed')).toContain(
      'revision 13 of 2026-01-20',
    );
    expect(
      refusalOf(() => on.sign({ newerRevision: newer, confirmation: confirmation({ against: '14' }) })).code,
    ).toBe('card-not-confirmed');
    expect(refusalOf(() => on.sign({ newerRevision: newer, confirmation: confirmation({ wrote: '11' }) })).code).toBe(
      'card-not-confirmed',
    );
    expect(
      refusalOf(() => on.sign({ newerRevision: newer, confirmation: confirmation({ card: 'other' }) })).code,
    ).toBe('card-not-confirmed');
    expect(() => on.sign({ newerRevision: newer, confirmation: confirmation() })).not.toThrow();
  });

  it('takes a confirmation only from somebody who may confirm', () => {
    const by = signed('engineer', '2026-01-27T07:00Z', { scope: { privileges: ['inspect'] } });
    expect(
      refusalOf(() =>
        started()
          .until()
          .sign({ newerRevision: newer, confirmation: confirmation({ by }) }),
      ).code,
    ).toBe('authorisation-does-not-cover');
  });

  it('is of the performer where the licence is of category A', () => {
    const on = started().until('flush').step('flush', { kind: 'done' }, 'third');
    const by = signed('tech', on.now, { scope: { licenceCategories: ['A'] } });
    expect(said(() => on.sign({ by }), 'card-steps-of-others')).toContain('Person third');
    expect(() =>
      started()
        .until()
        .sign({ by: signed('tech', '2026-01-27T08:17Z', { scope: { licenceCategories: ['A'] } }) }),
    ).not.toThrow();
  });

  it('comes before any release', () => {
    const on = started().until().sign();
    on.start({ card: card({ id: 'again', title: 'Another card' }) });
    const out = () => release(on.life, { id: 'r', by: signed('tech', on.now), outcome: 'closed' }, context(on.now));
    expect(said(out, 'cards-still-open')).toContain('Another card');
  });
});

describe('the card of a procedure', () => {
  const stays = card({
    id: 'isolate',
    purpose: 'procedure',
    accounts: [
      {
        id: 'pin',
        pair: 'fit-remove',
        what: 'lock pin',
        where: 'left gear',
        kind: 'lock-pin',
        numbered: true,
        undo: 'pull it',
        over: 'stays',
      },
    ],
    steps: [{ id: 'fit', kind: 'out', text: 'Fit the pin.', account: 'pin' }],
  });
  const procedure = {
    id: 'M1',
    kind: 'M' as const,
    text: 'Isolate.',
    card: 'isolate',
    leaves: [{ kind: 'lock-pin' as const, where: 'left gear', undo: 'pull it' }],
  };
  const owing = () => new Bench(deferredAs({ procedures: [procedure] }, '2026-01-26T10:00Z'));
  const WORK = '22-10-01/1/M1';

  it('does the procedure when it is signed, and not before', () => {
    const on = owing().start({ card: stays, procedure: WORK }).step('fit', { kind: 'out', count: 1, number: 'P-1' });
    expect(workOwed(on.life).map(({ code }) => code)).toEqual(['procedure-not-signed']);
    on.sign();
    expect(workOwed(on.life)).toEqual([]);
    expect(on.life.procedures[0]?.leaves).toMatchObject([{ tag: 'P-1' }]);
    expect(missingOf(on.life, on.life.cards[0]!)).toEqual([]);
    expect(replay(on.life.acts)).toEqual(on.life);
  });

  it('is the only way to do it', () => {
    const on = owing();
    const sign = () =>
      signProcedure(on.life, { id: 'x', by: signed('tech', on.now), work: WORK, leaves: [] }, context(on.now));
    expect(said(sign, 'procedure-has-card')).toContain('Start that card');
    expect(refusalOf(() => on.start({ procedure: WORK })).code).toBe('card-not-for-procedure');
    expect(refusalOf(() => started().start({ card: stays, procedure: WORK })).code).toBe('not-deferred');
    on.start({ card: stays, procedure: WORK });
    expect(said(() => on.start({ card: stays, procedure: WORK }), 'card-open-already')).toContain(
      'Go on with that one',
    );
  });

  it('is undone by the card that finds what it left, by its number', () => {
    const on = owing()
      .start({ card: stays, procedure: WORK })
      .step('fit', { kind: 'out', count: 1, number: 'P-1' })
      .sign();
    const back = card({
      id: 'restore',
      purpose: 'restoration',
      accounts: [{ ...stays.accounts![0]!, over: 'found' }],
      steps: [{ id: 'pull', kind: 'in', text: 'Pull the pin.', account: 'pin' }],
    });
    on.start({ card: back });
    expect(said(() => on.sign(), 'card-not-finished')).toContain('still fitted: lock pin at left gear (P-1)');
    expect(refusalOf(() => on.step('pull', { kind: 'in', count: 1, number: 'P-2' })).code).toBe('number-differs');
    on.step('pull', { kind: 'in', count: 1, number: 'P-1' }).sign();
    expect(on.life.left).toEqual([]);
  });
});
