import { describe, expect, it } from 'vitest';
import type { DocumentOwner } from '../act-base.js';
import type { LeftItem } from '../act-parts.js';
import { AIRCRAFT, actor, context, refusalOf, signed } from '../invented.fixture.js';
import { endDocument } from './change-owner.js';
import { askThingCorrection, correctThing } from './correct-thing.js';
import { findOnAircraft } from './find-on-aircraft.js';
import { fitUnderDocument } from './fit-under-document.js';
import { EMPTY_REGISTER, type RegisterLife } from './register-life.js';
import { removeFromAircraft, seeRemoval } from './remove-from-aircraft.js';
import { leaveThingAsWritten } from './thing-stays.js';
import { replayRegister } from './replay-register.js';
import type { RegisterAct } from './acts.js';

const at = '2026-01-27T10:00Z';
const given = context(at);
const by = signed('tech', at);
const second = signed('second', at);
const aircraft = AIRCRAFT;
const MOD: DocumentOwner = { kind: 'modification', reference: 'MOD 44', until: null };
const pin: LeftItem = { id: 'pin', kind: 'lock-pin', where: 'gear 2', tag: '7', undo: 'pull out' };
const breaker: LeftItem = { id: 'cb', kind: 'breaker', where: 'P11-C4', tag: '22', undo: 'push in' };

let count = 0;
const id = (): string => `r${(count += 1)}`;
const after = (life: RegisterLife, acts: readonly RegisterAct[]): RegisterLife => replayRegister(acts, life);
const fit = (life: RegisterLife, items: LeftItem[], owner = MOD) =>
  fitUnderDocument(life, { id: id(), by, aircraft, items, owner }, given);
const withPin = after(EMPTY_REGISTER, fit(EMPTY_REGISTER, [pin]));
const lost = after(
  withPin,
  findOnAircraft(withPin, { id: id(), by: actor('crew'), aircraft, items: [breaker] }, given),
);

describe('the register of an aircraft', () => {
  it('takes what a document leaves altered, and belongs to it', () => {
    expect(withPin.things).toEqual([{ item: pin, owner: MOD }]);
    expect(refusalOf(() => fit(EMPTY_REGISTER, [pin], { ...MOD, reference: ' ' })).code).toBe('text-missing');
    expect(refusalOf(() => fit(EMPTY_REGISTER, [], MOD)).code).toBe('text-missing');
    const over: DocumentOwner = { kind: 'permit', reference: 'PF-12', until: at };
    expect(refusalOf(() => fit(EMPTY_REGISTER, [pin], over)).code).toBe('document-over');
  });

  it('takes what anybody finds, as a thing without an owner', () => {
    expect(lost.things.at(-1)).toEqual({ item: breaker, owner: null });
  });

  it('does not take the same breaker twice, however its place is typed', () => {
    const again = { ...breaker, id: 'other', where: 'p11 c4', tag: '23' };
    const refusal = refusalOf(() => fit(lost, [again]), 'fitted-already');
    expect(refusal.message).toContain('breaker at P11-C4 (22)');
    const elsewhere = [{ item: breaker, owner: { kind: 'defect' as const, defect: 'D1' } }];
    const fitting = () =>
      fitUnderDocument(
        EMPTY_REGISTER,
        { id: id(), by, aircraft, items: [again], owner: MOD },
        context(at, { elsewhere }),
      );
    expect(refusalOf(fitting, 'fitted-already').message).toContain('belongs to D1');
  });

  it('tells placards and tools apart by their numbers, not by their place', () => {
    const placard = (tag: string): LeftItem => ({
      id: `p${tag}`,
      kind: 'placard',
      where: 'P5',
      tag,
      undo: 'take off',
    });
    const two = after(EMPTY_REGISTER, fit(EMPTY_REGISTER, [placard('1'), placard('2')]));
    expect(two.things).toHaveLength(2);
    expect(refusalOf(() => fit(two, [{ ...placard('1'), id: 'p3', where: 'P6' }])).code).toBe('fitted-already');
  });

  it('gives a thing out only undone and signed for, and another person sees that it is', () => {
    const nobody = signed('tech', at, { scope: { privileges: [] } });
    const remove = { id: id(), by, aircraft, items: ['pin'] };
    expect(refusalOf(() => removeFromAircraft(withPin, { ...remove, by: nobody }, given)).code).toBe(
      'authorisation-does-not-cover',
    );
    expect(refusalOf(() => removeFromAircraft(withPin, { ...remove, items: ['x'] }, given)).code).toBe(
      'left-item-unknown',
    );
    const undone = after(withPin, removeFromAircraft(withPin, remove, given));
    expect([undone.things, undone.unseen]).toEqual([[], [{ item: pin, removedBy: 'tech' }]]);
    const see = (who: typeof by) => seeRemoval(undone, { id: id(), by: who, aircraft, items: ['pin'] }, given);
    expect(refusalOf(() => see(by)).code).toBe('same-person-looking');
    expect(after(undone, see(second)).unseen).toEqual([]);
  });

  it('leaves without an owner what is under a document that ended', () => {
    const end = (owner: DocumentOwner) =>
      endDocument(withPin, { id: id(), by, aircraft, owner, reason: 'withdrawn' }, given);
    expect(after(withPin, end(MOD)).things).toEqual([{ item: pin, owner: null }]);
    expect(refusalOf(() => end({ ...MOD, reference: 'MOD 45' })).code).toBe('nothing-under-document');
  });

  it('is of one aircraft, in order, each act once, and the same when it is played again', () => {
    expect(replayRegister(JSON.parse(JSON.stringify(lost.acts)) as RegisterAct[])).toEqual(lost);
    const [first] = fit(EMPTY_REGISTER, [pin]);
    if (first === undefined) throw new Error('it was fitted');
    expect(refusalOf(() => replayRegister([first, first])).code).toBe('act-entered-twice');
    const other = { ...first, id: id(), items: [breaker], aircraft: { ...AIRCRAFT, registration: 'Q-ABB' } };
    expect(refusalOf(() => replayRegister([first, other])).code).toBe('act-of-another-aircraft');
    const early = { ...first, id: id(), items: [breaker], recordedAt: '2026-01-26T10:00Z' };
    const signedEarly = { ...early, enteredAt: '2026-01-26T10:00Z', by: signed('tech', '2026-01-26T10:00Z') };
    expect(refusalOf(() => replayRegister([first, signedEarly])).code).toBe('history-out-of-order');
    const strange = { ...first, kind: 'constructor' } as unknown as RegisterAct;
    expect(() => replayRegister([strange])).toThrow('No rule is known for acts of kind constructor');
  });
});

describe('correcting a line of the register', () => {
  const ask = (over: object = {}) =>
    askThingCorrection(
      lost,
      { id: 'asked', by, aircraft, item: 'cb', field: 'tag', was: '22', now: '27', reason: 'misread', ...over },
      given,
    );
  const asked = after(lost, ask());
  const look = (who: typeof by, life = asked) =>
    correctThing(life, { id: id(), aircraft, asked: 'asked', secondLook: who }, given);

  it('reads otherwise only once a second person has looked', () => {
    expect(asked.things).toEqual(lost.things);
    const corrected = after(asked, look(second));
    expect([corrected.things.at(-1)?.item.tag, corrected.asked]).toEqual(['27', []]);
  });

  it('is refused by the same person, by one who may not inspect, and for what is not asked', () => {
    expect(refusalOf(() => look(by)).code).toBe('same-person-looking');
    const nobody = signed('second', at, { scope: { privileges: ['defer'] } });
    expect(refusalOf(() => look(nobody)).code).toBe('authorisation-does-not-cover');
    expect(refusalOf(() => look(second, lost)).code).toBe('correction-not-asked');
    expect(refusalOf(() => ask({ was: '99' })).code).toBe('correction-of-nothing');
    expect(refusalOf(() => ask({ was: '99' })).message).toMatch(
      /things left on Q-.*: the number on it does not read "99"/,
    );
  });

  it('is not made where another found the first words right, or whoever asked takes it back', () => {
    const leave = (who: typeof by, over: object = {}) =>
      leaveThingAsWritten(asked, { id: id(), by: who, aircraft, asked: 'asked', reason: 'it is 22', ...over }, given);
    for (const who of [second, by]) {
      const left = after(asked, leave(who));
      expect([left.things, left.asked]).toEqual([lost.things, []]);
      expect(replayRegister(left.acts)).toEqual(left);
      expect(refusalOf(() => look(second, left)).code).toBe('correction-not-asked');
    }
    const writer = signed('other', at, { scope: { privileges: ['write-up'] } });
    expect(refusalOf(() => leave(writer)).code).toBe('authorisation-does-not-cover');
    expect(refusalOf(() => leave(second, { asked: 'x' })).code).toBe('correction-not-asked');
    expect(refusalOf(() => leave(second, { reason: ' ' })).code).toBe('text-missing');
  });

  it('makes no second one of a thing that stands there already', () => {
    const two = after(lost, fit(lost, [{ ...breaker, id: 'cb2', where: 'P11-C5' }]));
    const clash = () =>
      askThingCorrection(
        two,
        { id: id(), by, aircraft, item: 'cb2', field: 'where', was: 'P11-C5', now: 'P11 C4', reason: 'misread' },
        given,
      );
    expect(refusalOf(clash).code).toBe('fitted-already');
  });
});
