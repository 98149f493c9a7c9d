/** Steps of a card. 145.A.45(e); 145.A.48(a); 66.A.20(a); 14 CFR 121.371(c). The card is invented. */
import { describe, expect, it } from 'vitest';
import { authorisation, refusalOf, writtenUp } from '../invented.fixture.js';
import type { RefusalCode } from '../refusals.js';
import { stepInFull, stepInWords } from './card-work.js';
import { Bench, card } from './cards.fixture.js';

const started = () => new Bench(writtenUp('2026-01-26T10:00Z')).start();
const said = (act: () => unknown, code: RefusalCode): string => {
  const { message, next } = refusalOf(act, code);
  return `${message} ${next}`;
};

describe('a step', () => {
  it('waits for its turn, and the refusal names what comes first', () => {
    expect(
      said(
        () => started().until('seals').step('level', { kind: 'measured', value: 3.5, unit: 'l' }),
        'step-before-others',
      ),
    ).toBe(
      'Step 5 "Read the level" comes after steps that are not done: step 4 "Renew both seals". Do first: step 4 "Renew both seals".',
    );
  });

  it('is not done twice', () => {
    const on = started().until('unlatch');
    expect(said(() => on.step('pull', { kind: 'out', count: 1, number: 'C-23' }), 'step-done-already')).toContain(
      'Person tech',
    );
  });

  it('is done the way its kind asks', () => {
    expect(said(() => started().step('pull', { kind: 'done' }), 'step-done-otherwise')).toContain('count out');
    expect(refusalOf(() => started().step('none', { kind: 'done' })).code).toBe('step-unknown');
    expect(refusalOf(() => started().until('second').step('second', { kind: 'done' })).code).toBe(
      'step-done-otherwise',
    );
    expect(refusalOf(() => started().until().inspect('none')).code).toBe('step-unknown');
    expect(refusalOf(() => started().inspect('pull')).code).toBe('step-done-otherwise');
  });

  it('is done only by somebody who may sign procedures then, on this type, for this operator', () => {
    const pull = (over: object) => () =>
      started().step('pull', { kind: 'out', count: 1, number: 'C-22' }, 'tech', authorisation('tech', over));
    expect(refusalOf(pull({ privileges: ['inspect'] })).code).toBe('authorisation-does-not-cover');
    expect(refusalOf(pull({ aircraftTypes: ['other'] })).code).toBe('authorisation-does-not-cover');
    expect(refusalOf(pull({ validUntil: '2026-01-27T00:00Z' })).code).toBe('authorisation-not-valid-then');
    expect(refusalOf(pull({ person: 'other' })).code).toBe('authorisation-of-another-person');
    expect(refusalOf(() => started().start({ on: authorisation('tech', { privileges: [] }) })).code).toBe(
      'authorisation-does-not-cover',
    );
  });

  it('is done only under the licence that it asks for', () => {
    const renew = () =>
      started()
        .until('seals')
        .step(
          'seals',
          { kind: 'renewed', partNumber: 'S-1', batch: 'B', count: 2 },
          'tech',
          authorisation('tech', { licenceCategories: ['A'] }),
        );
    expect(said(renew, 'step-needs-licence')).toContain('B1 or B2');
  });

  it('reads a value inside the limits of the card, in its unit, or does not go on', () => {
    const read =
      (value: number, unit = 'l') =>
      () =>
        started().until('level').step('level', { kind: 'measured', value, unit });
    expect(said(read(4.6), 'value-outside-limits')).toContain('4.6 l; the card allows 3 to 4.5 l');
    expect(refusalOf(read(2.9)).code).toBe('value-outside-limits');
    expect(refusalOf(read(3.5, 'kg')).code).toBe('reading-missing');
    expect(refusalOf(read(Number.NaN)).code).toBe('reading-missing');
    expect(read(3)).not.toThrow();
    expect(read(4.5)).not.toThrow();
  });

  it('renews every part that the card names, by number and batch', () => {
    const renew = (over: object) => () =>
      started()
        .until('seals')
        .step('seals', { kind: 'renewed', partNumber: 'S-1', batch: 'B-7', count: 2, ...over });
    expect(said(renew({ count: 1 }), 'renewed-too-few')).toContain('cannot be left out');
    expect(refusalOf(renew({ batch: ' ' })).code).toBe('text-missing');
    expect(refusalOf(renew({ partNumber: '' })).code).toBe('text-missing');
  });
});

describe('a wait', () => {
  it('lasts as long as the aircraft showed, from its recorded start, and is not cut short by a minute', () => {
    const on = started().until('cool').step('cool', { kind: 'begun', minutes: 12 }).pass(11);
    expect(said(() => on.step('cool', { kind: 'waited' }), 'wait-cut-short')).toContain(
      'cut short by 1 min. Go on until 2026-01-27T08:12:00Z',
    );
    expect(() => on.pass(1).step('cool', { kind: 'waited' })).not.toThrow();
  });

  it('takes no value that nobody read', () => {
    const begin = (minutes?: number) => () =>
      started()
        .until('cool')
        .step('cool', { kind: 'begun', ...(minutes === undefined ? {} : { minutes }) });
    expect(said(begin(), 'minutes-not-shown')).toContain('the hydraulic page');
    expect(refusalOf(begin(1)).code).toBe('minutes-not-shown');
    expect(refusalOf(begin(2.5)).code).toBe('minutes-not-shown');
    expect(refusalOf(() => started().until('leak').step('leak', { kind: 'begun', minutes: 4 })).code).toBe(
      'minutes-not-shown',
    );
  });

  it('counts from its last beginning', () => {
    const on = started()
      .until('cool')
      .step('cool', { kind: 'begun', minutes: 5 })
      .pass(4)
      .step('cool', { kind: 'begun', minutes: 5 })
      .pass(2);
    expect(refusalOf(() => on.step('cool', { kind: 'waited' })).code).toBe('wait-cut-short');
    expect(refusalOf(() => started().until('cool').step('cool', { kind: 'waited' })).code).toBe('wait-not-begun');
  });
});

describe('a leak check', () => {
  const running = () => started().until('leak').step('leak', { kind: 'begun' });
  const reading = { id: 'case', value: 71, unit: 'C' };

  it('is refused when it is cut short', () => {
    expect(
      said(
        () =>
          running()
            .pass(3)
            .step('leak', { kind: 'ran', readings: [reading] }),
        'wait-cut-short',
      ),
    ).toContain('short by 2 min');
  });

  it('gives every reading within limits, and each once', () => {
    const end = (readings: (typeof reading)[]) => () => running().pass(5).step('leak', { kind: 'ran', readings });
    expect(said(end([]), 'reading-missing')).toContain('case temperature in C');
    expect(refusalOf(end([reading, reading])).code).toBe('reading-missing');
    expect(refusalOf(end([{ ...reading, value: 91 }])).code).toBe('value-outside-limits');
  });

  it('is done only with the look afterwards, which comes after the end of the last run', () => {
    const looked = { kind: 'looked', findings: 'dry' } as const;
    expect(refusalOf(() => running().step('leak', looked)).code).toBe('step-done-otherwise');
    const ran = running()
      .pass(5)
      .step('leak', { kind: 'ran', readings: [reading] });
    expect(refusalOf(() => ran.sign()).message).toContain('not done: step 7 "Run the pump and watch";');
    ran.step('leak', { kind: 'begun' });
    expect(refusalOf(() => ran.step('leak', looked)).code).toBe('step-done-otherwise');
  });
});

describe('a step in words', () => {
  const { steps } = card();

  it('is its number on the card and what it asks, whole where that is short', () => {
    const words = steps.map((step) => stepInWords({ steps }, step));
    expect([words[0], words[9]]).toEqual(['1 "Pull and collar the pump breaker"', '10 "All latches flush"']);
  });

  it('is cut at a word where it is long, and its own marks do not end it', () => {
    const text = `On the call "open", turn the handle ${'slowly '.repeat(20)}by hand.`;
    const long = { id: 'turn', kind: 'do', text } as const;
    expect(stepInWords({ steps: [long] }, long)).toMatch(
      /^1 "On the call 'open', turn the handle (slowly ?)+\.\.\."$/,
    );
    expect(stepInWords({ steps: [long] }, long).length).toBeLessThanOrEqual(98);
    expect(stepInFull({ steps: [long] }, long)).toBe(`1 "${text.replaceAll('"', "'")}"`);
    const word = { ...long, text: 'x'.repeat(200) };
    expect(stepInWords({ steps: [word] }, word)).toBe(`1 "${'x'.repeat(90)}..."`);
  });
});
