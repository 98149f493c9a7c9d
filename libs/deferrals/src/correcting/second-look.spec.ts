import { describe, expect, it } from 'vitest';
import { basisShown } from '../accepting/basis-shown.js';
import { changeRow } from '../deferring/change-row.js';
import type { DefectLife } from '../defect-life.js';
import { defer } from '../deferring/defer.js';
import { aircraftGates } from '../flying/aircraft-gates.js';
import {
  authorisation,
  context,
  deferredAs,
  identifiedAs,
  goneOver,
  offer,
  refusalOf,
  signed,
  writtenUp,
} from '../invented.fixture.js';
import { fitPlacard, placardsFitted } from '../leaving/fit-placard.js';
import { rectify } from '../rectifying/rectify.js';
import { release } from '../rectifying/release.js';
import { proceed } from '../replay.js';
import { admitOneOff } from '../signing/admit-one-off.js';
import { signaturesOf } from '../signing/signatures-of.js';
import { standing } from '../standing.js';
import { askCorrection, lookAndCorrect, type AskCorrection } from './ask-correction.js';
import { correct } from './correct.js';
import { asked, at, deferred, given, placard, RECORDED, second, tech } from './corrections.fixture.js';
import { readsNow } from './reads-now.js';

const document = {
  kind: 'authority-document' as const,
  reference: 'AD-7 rev 1',
  issuedBy: 'Authority',
  limit: '2 mm',
  conditions: [],
};

describe('which unit a deferral is of', () => {
  const unit = { offered: offer(), installed: ['1', '2', '3'], others: [] };
  const ask = (now: string, over: Partial<AskCorrection> = {}) =>
    askCorrection(deferred, asked(deferred, { act: 'deferred', field: 'unit', now, unit, ...over }), given);
  const waits = proceed(deferred, ask('2'));

  it('stays as it was until a second person looked, and the aircraft does not leave meanwhile', () => {
    expect(waits.item?.units).toEqual(['1']);
    expect(aircraftGates([deferred], [], [], at).openWork).toEqual([]);
    expect(aircraftGates([waits], [], [], at).openWork[0]).toContain('the unit');
    const corrected = proceed(waits, lookAndCorrect(waits, { id: 'l', asked: 'c', secondLook: second, unit }, given));
    expect(corrected.item?.units).toEqual(['2']);
    expect(corrected.asked).toEqual([]);
    expect(aircraftGates([corrected], [], [], at).openWork).toEqual([]);
    expect(corrected.limits).toEqual(deferred.limits);
    expect([deferred, waits, corrected].map(basisShown)).toEqual(['deferred', 'deferred', 'l']);
    expect(standing(corrected, at).deadline).toEqual(standing(deferred, at).deadline);
  });

  it('is never corrected by one person alone, nor looked at by the one who asked', () => {
    const alone = asked(deferred, { act: 'deferred', field: 'unit', now: '2' });
    expect(refusalOf(() => correct(deferred, alone, given)).code).toBe('second-look-missing');
    const same = { id: 'l', asked: 'c', secondLook: tech, unit };
    expect(refusalOf(() => lookAndCorrect(waits, same, given)).code).toBe('same-person-looking');
    const nobody = signed('second', at, { scope: { privileges: ['defer'] } });
    const look = { id: 'l', asked: 'c', secondLook: nobody, unit };
    expect(refusalOf(() => lookAndCorrect(waits, look, given)).code).toBe('authorisation-does-not-cover');
  });

  it('uses up the one-off authorisation of whoever looked, and keeps that signature alone', () => {
    const oneOff = { defect: waits.defect, issuedBy: second, issuedAt: at, because: 'nobody else is here' };
    const once = { ...second, authorisation: { ...second.authorisation, number: 'ONE-1', oneOff } };
    const looked = proceed(waits, lookAndCorrect(waits, { id: 'l', asked: 'c', secondLook: once, unit }, given));
    expect(looked.acts.slice(-1).flatMap(signaturesOf)).toEqual([once]);
    expect(() => admitOneOff(once, waits)).not.toThrow();
    expect(refusalOf(() => admitOneOff(once, looked)).code).toBe('one-off-used');
  });

  it('is a unit that is installed, that the row relieves, and that is not down already', () => {
    expect(refusalOf(() => ask('4')).code).toBe('row-not-for-this-unit');
    const bare = { ...unit, installed: ['1'] };
    expect(refusalOf(() => ask('2', { unit: bare })).code).toBe('unit-not-installed');
    const other = identifiedAs(writtenUp(RECORDED, { defect: 'D2' }), ['2']);
    const basis = { kind: 'mel-row' as const, row: '1' };
    const down = proceed(
      other,
      defer(other, { id: 'D2-deferred', by: signed('tech', RECORDED), basis }, context(RECORDED)),
    );
    expect(refusalOf(() => ask('2', { unit: { ...unit, others: [down] } })).code).toBe('unit-deferred-already');
    const twice = { id: 'l', asked: 'c', secondLook: second, unit: { ...unit, others: [down] } };
    expect(refusalOf(() => lookAndCorrect(waits, twice, given)).code).toBe('unit-deferred-already');
  });

  it('counts by the same interval, or the row is changed instead', () => {
    const shorter = { ...unit, offered: offer({ intervalByUnit: { '2': '5 calendar-days' } }) };
    expect(refusalOf(() => ask('2', { unit: shorter })).code).toBe('interval-of-another-unit');
    expect(refusalOf(() => ask('2', { unit: { ...unit, offered: null } })).code).toBe('interval-of-another-unit');
  });

  it('is not corrected where a limit counts its engine', () => {
    const own = { category: 'A' as const, interval: '125 engine-hours' };
    const life = deferredAs(own, RECORDED);
    expect(life.limits.map(({ clock }) => clock?.kind === 'counted' && clock.engine)).toEqual(['1']);
    const offers = { ...unit, offered: offer(own) };
    const command = asked(life, { act: 'deferred', field: 'unit', now: '2', unit: offers });
    const refusal = refusalOf(() => askCorrection(life, command, given), 'counted-by-engine');
    expect(refusal.message).toContain('engine 1');
    const stored = proceed(life, [...waits.asked]);
    const look = { id: 'l', asked: 'c', secondLook: second, unit: offers };
    expect(refusalOf(() => lookAndCorrect(stored, look, given)).code).toBe('counted-by-engine');
  });

  it('is corrected in the basis in force alone', () => {
    const change = { id: 'n', by: tech, basis: { kind: 'mel-row' as const, row: '1' }, reason: 'other relief' };
    const changed = proceed(deferred, changeRow(deferred, change, given));
    const command = asked(deferred, { act: 'deferred', field: 'unit', now: '2', unit });
    expect(refusalOf(() => askCorrection(changed, command, given)).code).toBe('correction-of-nothing');
    const newer = asked(changed, { act: 'n', field: 'unit', now: '2', unit });
    expect(askCorrection(changed, newer, given)).toHaveLength(1);
  });
});

describe('what else decides something', () => {
  const looked = (life: DefectLife, command: AskCorrection): DefectLife => {
    const waits = proceed(life, askCorrection(life, command, given));
    return proceed(waits, lookAndCorrect(waits, { id: 'l', asked: command.id, secondLook: second }, given));
  };

  it('the text of a placard makes it the one that is owed', () => {
    const text = { id: 'p', by: tech, text: 'AP 1 1NOP', position: 'glareshield', tag: '7' };
    const life = proceed(deferred, fitPlacard(deferred, text, given));
    expect(standing(life, at).owed).toHaveLength(1);
    const right = looked(life, asked(life, { act: 'p', field: 'placardText', now: placard.text }));
    expect(placardsFitted(right)).toEqual([placard.text]);
    expect(standing(right, at).owed).toEqual([]);
  });

  it('the limit of a document, and not its number or who issued it', () => {
    const open = writtenUp(RECORDED);
    const life = proceed(
      open,
      defer(open, { id: 'd', by: signed('tech', RECORDED), basis: document }, context(RECORDED)),
    );
    const limit = asked(life, { act: 'd', field: 'limit', now: '3 mm' });
    expect(refusalOf(() => correct(life, limit, given)).code).toBe('second-look-missing');
    const right = looked(life, limit);
    const number = asked(right, { act: 'd', field: 'reference', now: 'AD-8 rev 1', id: 'n' });
    const { deferral, bases } = proceed(right, correct(right, number, given));
    expect(deferral?.basis).toEqual({ ...document, limit: '3 mm', reference: 'AD-8 rev 1' });
    expect(bases).toEqual([deferral?.basis]);
  });

  it('the number of a document stays where work was signed under it', () => {
    const open = writtenUp(RECORDED);
    const procedures = [{ id: 'M1', kind: 'M' as const, text: 'Look.' }];
    const basis = { ...document, procedures };
    const life = proceed(open, defer(open, { id: 'd', by: signed('tech', RECORDED), basis }, context(RECORDED)));
    const command = { ...asked(life, { act: 'd', field: 'reference', now: 'AD-8' }), was: document.reference };
    expect(refusalOf(() => correct(life, command, given)).code).toBe('correction-of-nothing');
  });

  it('what a release says stays open', () => {
    const unfinished = { id: 'h', by: tech, workDone: 'Begun.', reference: 'AMM', complete: false };
    const begun = goneOver(proceed(deferred, rectify(deferred, unfinished, given)), tech, at);
    const open = release(begun, { id: 'r', by: tech, outcome: 'stays-open', staysOpen: ['panel A', 'seal'] }, given);
    const life = proceed(begun, open);
    const command = asked(life, { act: 'r', field: 'staysOpen', part: 1, now: 'seal B' });
    expect(refusalOf(() => correct(life, command, given)).code).toBe('second-look-missing');
    const right = looked(life, command);
    expect(readsNow(right, { act: 'r', field: 'staysOpen', item: null, part: 1 })).toBe('seal B');
    expect(readsNow(right, { act: 'r', field: 'staysOpen', item: null, part: 0 })).toBe('panel A');
    const stopped = { ...life, cards: [{ started: { card: { title: 'seal' } } }] } as unknown as DefectLife;
    const silent = asked(life, { act: 'r', field: 'staysOpen', part: 1, now: 'nothing' });
    expect(refusalOf(() => askCorrection(stopped, silent, given)).code).toBe('stopped-card-not-said');
    expect(askCorrection(stopped, command, given)).toHaveLength(1);
  });
});

it('an authorisation to write up is not one to correct a deferral', () => {
  const by = signed('tech', at, { scope: authorisation('tech', { privileges: ['write-up'] }) });
  const unit = { offered: offer(), installed: ['1', '2'], others: [] };
  const command = asked(deferred, { act: 'deferred', field: 'unit', now: '2', unit, by });
  expect(refusalOf(() => askCorrection(deferred, command, given)).code).toBe('authorisation-does-not-cover');
});
