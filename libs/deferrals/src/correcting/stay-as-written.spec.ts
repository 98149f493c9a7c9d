/** A correction that waits can be left unmade, and one that points at nothing any more ends by itself. 145.A.48. */
import { describe, expect, it } from 'vitest';
import { changeRow } from '../deferring/change-row.js';
import { defer } from '../deferring/defer.js';
import { transfer } from '../deferring/transfer.js';
import type { DefectLife } from '../defect-life.js';
import { aircraftGates } from '../flying/aircraft-gates.js';
import { actor, context, identifiedAs, offer, refusalOf, signed, writtenUp } from '../invented.fixture.js';
import { proceed, replay } from '../replay.js';
import { identify } from '../writing-up/identify.js';
import { askCorrection, lookAndCorrect } from './ask-correction.js';
import { askingsEndedBy } from './asked-after.js';
import { asked, at, deferred, given, RECORDED, second, tech } from './corrections.fixture.js';
import { stayAsWritten, type StayAsWritten } from './stay-as-written.js';

const unit = { offered: offer(), installed: ['1', '2', '3'], others: [] };
const waits = proceed(
  deferred,
  askCorrection(deferred, asked(deferred, { act: 'deferred', field: 'unit', now: '2', unit }), given),
);
const stays = (life: DefectLife, over: Partial<StayAsWritten> = {}): DefectLife =>
  proceed(
    life,
    stayAsWritten(life, { id: 's', by: second, asked: 'c', reason: 'It is the left one.', ...over }, given),
  );
const gatesOf = (life: DefectLife): string[] => aircraftGates([life], [], [], at).openWork;

describe('what was written is right', () => {
  it('the second person says so, all reads as before, and the aircraft waits no longer', () => {
    const left = stays(waits);
    expect([left.asked, gatesOf(left)]).toEqual([[], []]);
    expect([left.item, left.deferral, left.limits]).toEqual([deferred.item, deferred.deferral, deferred.limits]);
    expect(left.acts.map(({ kind }) => kind).slice(-2)).toEqual(['correction-asked', 'stays-as-written']);
    expect(replay(left.acts)).toEqual(left);
  });

  it('may be asked again, and the old asking is not looked at any more', () => {
    const left = stays(waits);
    const look = { id: 'l', asked: 'c', secondLook: second, unit };
    expect(refusalOf(() => lookAndCorrect(left, look, given)).code).toBe('correction-not-asked');
    const again = asked(left, { id: 'c2', act: 'deferred', field: 'unit', now: '2', unit });
    expect(askCorrection(left, again, given)).toHaveLength(1);
  });

  it('whoever asked takes it back as they asked, and needs no privilege to inspect', () => {
    const by = signed('tech', at, { scope: { privileges: ['defer'] } });
    expect(stays(waits, { by }).asked).toEqual([]);
    const lost = signed('tech', at, { scope: { privileges: ['inspect'] } });
    expect(refusalOf(() => stays(waits, { by: lost })).code).toBe('authorisation-does-not-cover');
  });

  it('another person looks, and so may inspect; nobody does it unsigned or without a reason', () => {
    const by = signed('second', at, { scope: { privileges: ['defer', 'write-up'] } });
    expect(refusalOf(() => stays(waits, { by })).code).toBe('authorisation-does-not-cover');
    const nobody = actor('second') as typeof second;
    expect(refusalOf(() => stays(waits, { by: nobody })).code).toBe('signature-missing');
    expect(refusalOf(() => stays(waits, { reason: ' ' })).code).toBe('text-missing');
    expect(refusalOf(() => stays(waits, { asked: 'none' })).code).toBe('correction-not-asked');
    expect(refusalOf(() => stays(stays(waits), { id: 's2' })).code).toBe('correction-not-asked');
  });
});

const swap = (life: DefectLife, fromUnit: string, toUnit: string) => {
  const said = { parts: [], reason: 'to compare', moved: [], others: [], installed: ['1', '2', '3', '4'] };
  return transfer(life, { id: 'swap', by: tech, fromUnit, toUnit, ...said }, given);
};
const change = { id: 'n', by: tech, basis: { kind: 'mel-row' as const, row: '1' }, reason: 'other relief' };

describe('what a waiting correction pointed at is no more', () => {
  it('since the part was swapped: it ends, and the act that ended it tells', () => {
    const after = proceed(waits, swap(waits, '1', '3'));
    expect([after.asked, gatesOf(after)]).toEqual([[], []]);
    expect(after.acts.flatMap((act) => askingsEndedBy(act, after.acts))).toEqual(waits.asked);
    expect(replay(after.acts)).toEqual(after);
  });

  it('since the row was changed: the unit, and the limit of a document too', () => {
    const after = proceed(waits, changeRow(waits, change, given));
    expect([after.asked, gatesOf(after)]).toEqual([[], []]);
    expect(after.acts.flatMap((act) => askingsEndedBy(act, after.acts))).toEqual(waits.asked);
    const open = identifiedAs(writtenUp(RECORDED));
    const words = { reference: 'AD-7', issuedBy: 'Authority', limit: '2 mm', conditions: [] };
    const document = { kind: 'authority-document' as const, ...words };
    const by = signed('tech', RECORDED);
    const life = proceed(open, defer(open, { id: 'd', by, basis: document }, context(RECORDED)));
    const limit = proceed(life, askCorrection(life, asked(life, { act: 'd', field: 'limit', now: '3 mm' }), given));
    expect(limit.asked).toHaveLength(1);
    expect(proceed(limit, changeRow(limit, change, given)).asked).toEqual([]);
  });

  it('since it was ruled out; what points at the other unit still waits', () => {
    const open = identifiedAs(writtenUp(RECORDED), ['1', '2']);
    const offered = offer({ covers: ['1', '2', '3'] });
    const basis = { kind: 'mel-row' as const, row: '1' };
    const by = signed('tech', RECORDED);
    const life = proceed(open, defer(open, { id: 'd', by, basis }, context(RECORDED, { offered })));
    const offers = { ...unit, offered };
    const command = asked(life, { act: 'd', field: 'unit', part: 1, now: '3', unit: offers });
    const two = proceed(life, askCorrection(life, command, given));
    const narrowed = (units: string[]) =>
      identify(
        two,
        { id: 'i', by: tech, item: { entry: '22-10-01', subEntry: 'all', units }, installed: ['1', '2'] },
        given,
      );
    expect(proceed(two, narrowed(['1'])).asked).toEqual([]);
    expect(proceed(two, narrowed(['2'])).asked).toHaveLength(1);
    const moved = proceed(two, swap(two, '1', '4'));
    expect(moved.asked).toHaveLength(1);
    expect(moved.acts.flatMap((act) => askingsEndedBy(act, moved.acts))).toEqual([]);
  });
});
