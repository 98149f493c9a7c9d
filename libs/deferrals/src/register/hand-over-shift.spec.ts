import { describe, expect, it } from 'vitest';
import { AIRCRAFT as aircraft, context, refusalOf, signed } from '../invented.fixture.js';
import { giveShift, type ShiftList, takeShift } from './hand-over-shift.js';
import { EMPTY_REGISTER } from './register-life.js';
import { replayRegister } from './replay-register.js';

const at = '2026-01-27T18:00Z';
const given = context(at);
const late = signed('late shift', at);
const night = signed('night shift', at);
const list: ShiftList = {
  left: [{ id: 'cb', words: 'breaker at P11-C4 (22)', owner: 'Q-ABA/3' }],
  open: ['Q-ABA/3 autopilot (open under deferral)'],
};
const give = { id: 'g', by: late, aircraft, list, to: 'night shift' };
const offered = replayRegister(giveShift(EMPTY_REGISTER, give, given));
const take = (over: object = {}) =>
  takeShift(offered, { id: 't', by: night, aircraft, given: 'g', list, ...over }, given);

describe('handing the aircraft over to the next shift', () => {
  it('is signed by who gives and by who takes, on the same list', () => {
    expect(offered.offered).toMatchObject({ left: list.left, open: list.open, by: { person: 'late shift' } });
    const taken = replayRegister(take(), offered);
    expect(taken.offered).toBeNull();
    expect(taken.lastTaken).toMatchObject({ given: { id: 'g' }, taken: { by: { person: 'night shift' } } });
  });

  it('is not taken by who gives, nor when nobody gave it', () => {
    expect(refusalOf(() => take({ by: late })).code).toBe('same-person-taking');
    expect(refusalOf(() => take({ given: 'other' })).code).toBe('no-such-hand-over');
    expect(refusalOf(() => giveShift(EMPTY_REGISTER, { ...give, to: ' ' }, given)).code).toBe('text-missing');
  });

  it('is not taken when anything changed since it was signed, and the refusal says what', () => {
    const now: ShiftList = { left: [], open: [...list.open, 'Q-ABA/4 fan (unanswered)'] };
    const refusal = refusalOf(() => take({ list: now }), 'changed-since-given');
    expect(refusal.facts['differing']).toEqual([
      'no longer: breaker at P11-C4 (22), Q-ABA/3',
      'new: Q-ABA/4 fan (unanswered)',
    ]);
    const tag: ShiftList = { ...list, left: [{ id: 'cb', words: 'breaker at P11-C4 (27)', owner: 'Q-ABA/3' }] };
    expect(refusalOf(() => take({ list: tag })).code).toBe('changed-since-given');
  });
});
