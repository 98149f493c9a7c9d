import { describe, expect, it } from 'vitest';
import type { DocumentOwner, LeftItem } from '../acts.js';
import type { DefectLife } from '../defect-life.js';
import { aircraftGates } from '../flying/aircraft-gates.js';
import { AIRCRAFT, context, deferredAs, identifiedAs, refusalOf, signed, writtenUp } from '../invented.fixture.js';
import { findOnAircraft } from '../register/find-on-aircraft.js';
import { EMPTY_REGISTER, type RegisterLife } from '../register/register-life.js';
import { replayRegister } from '../register/replay-register.js';
import { proceed } from '../replay.js';
import { leaveOnAircraft } from './leave.js';
import { moveThings, type Holder } from './move-things.js';
import { undoLeft } from './undo.js';

const at = '2026-01-27T10:00Z';
const given = context(at);
const by = signed('tech', at);
const cb: LeftItem = { id: 'cb', kind: 'breaker', where: 'P11-C4', tag: '22', undo: 'push in' };
const MOD: DocumentOwner = { kind: 'modification', reference: 'MOD 44', until: null };
const one = deferredAs({}, '2026-01-26T10:00Z');
const withCb = proceed(one, leaveOnAircraft(one, { id: 'l', by, items: [cb] }, given));
const two = identifiedAs(writtenUp('2026-01-26T11:00Z', { defect: 'D2' }), ['2']);

let count = 0;
const move = (from: Holder, to: Holder, together = false, items = ['cb']) => {
  const ids = { gives: `g${(count += 1)}`, takes: `t${count}` };
  return moveThings({ ids, by, items, from, to, together, reason: 'both need it pulled' }, given);
};
const defect = (life: DefectLife): Holder => ({ kind: 'defect', life });
const register = (life: RegisterLife, owner: DocumentOwner | null): Holder => ({ kind: 'register', life, owner });
const ids = ({ left }: DefectLife): string[] => left.map(({ id }) => id);

describe('changing the owner of a thing left on the aircraft', () => {
  it('is written by who gives and by who takes; each clock stays', () => {
    const moved = move(defect(withCb), defect(two));
    const [gives, takes] = [proceed(withCb, moved.gives), proceed(two, moved.takes)];
    expect([ids(gives), ids(takes)]).toEqual([[], ['cb']]);
    expect([gives.limits, takes.recordedAt]).toEqual([withCb.limits, two.recordedAt]);
  });

  it('may leave it with both, and then neither undoes it alone', () => {
    const shared = move(defect(withCb), defect(two), true);
    expect(shared.gives).toEqual([]);
    const other = proceed(two, shared.takes);
    const elsewhere = [{ item: cb, owner: { kind: 'defect' as const, defect: 'D2' } }];
    const undo = () => undoLeft(withCb, { id: 'u', by, items: ['cb'] }, context(at, { elsewhere }));
    expect(refusalOf(undo, 'left-for-another-too').message).toContain('D2');
    const given2 = move(defect(withCb), defect(other));
    expect([given2.takes, ids(proceed(withCb, given2.gives))]).toEqual([[], []]);
  });

  it('goes to a document and back', () => {
    const adopted = move(defect(withCb), register(EMPTY_REGISTER, MOD));
    const there = replayRegister(adopted.register);
    expect([ids(proceed(withCb, adopted.gives)), there.things]).toEqual([[], [{ item: cb, owner: MOD }]]);
    const back = move(register(there, MOD), defect(two));
    expect(replayRegister(back.register, there).things).toEqual([]);
    expect(ids(proceed(two, back.takes))).toEqual(['cb']);
  });

  it('gives an owner to what had none, and then the aircraft is no longer kept for it', () => {
    const aircraft = AIRCRAFT;
    const lost = replayRegister(findOnAircraft(EMPTY_REGISTER, { id: 'f', by, aircraft, items: [cb] }, given));
    const entry = (owner: DocumentOwner | null) => [{ ...cb, owner, undone: false }];
    expect(aircraftGates([], entry(lost.things[0]?.owner ?? null), [], at).orphans).toHaveLength(1);
    const owned = replayRegister(move(register(lost, null), register(lost, MOD)).register, lost);
    expect(aircraftGates([], entry(owned.things[0]?.owner ?? null), [], at).orphans).toEqual([]);
  });

  it('is refused to nobody, to itself, of what is not there, and to a document together with a defect', () => {
    expect(refusalOf(() => move(defect(withCb), register(EMPTY_REGISTER, null))).code).toBe('owner-not-named');
    expect(refusalOf(() => move(defect(withCb), defect(withCb))).code).toBe('moved-to-itself');
    expect(refusalOf(() => move(defect(withCb), defect(two), false, ['x'])).code).toBe('left-item-unknown');
    const adopted = replayRegister(move(defect(withCb), register(EMPTY_REGISTER, MOD)).register);
    expect(refusalOf(() => move(register(adopted, MOD), defect(two), true)).code).toBe('together-only-defects');
    expect(refusalOf(() => move(defect(withCb), register(EMPTY_REGISTER, MOD), true)).code).toBe(
      'together-only-defects',
    );
  });
});
