/** A second person who signs for himself. 145.A.45(e); 145.A.30(g); 66.A.20(a). The card is invented. */
import { describe, expect, it } from 'vitest';
import type { Need } from '#mel';
import { actor, authorisation, refusalOf, writtenUp } from '../invented.fixture.js';
import type { Authorisation } from '../people.js';
import { replay } from '../replay.js';
import { Bench, card } from './cards.fixture.js';

const SWITCH: Need = { kind: 'second-person', what: 'somebody at the pump switch' };

/** At the leak check, which needs a second person. */
function atLeak(need: Partial<Need> = {}): Bench {
  const steps = card().steps.map((step) =>
    step.id === 'leak' ? { ...step, needs: [{ ...SWITCH, ...need }] } : step,
  );
  return new Bench(writtenUp('2026-01-26T10:00Z')).start({ card: card({ steps }) }).until('leak');
}

const begin = (on: Bench, more: Parameters<Bench['step']>[4]): Bench =>
  on.step('leak', { kind: 'begun' }, 'tech', authorisation('tech'), more);

const refused = (on: Bench, more: Parameters<Bench['step']>[4]) => refusalOf(() => begin(on, more));

describe('a step that needs a second person', () => {
  it('is not begun alone, and says who is missing and what to do', () => {
    const alone = refused(atLeak(), {});
    expect(alone.code).toBe('second-person-missing');
    expect(alone.message).toContain('(somebody at the pump switch), and Person tech names nobody');
    expect(alone.next).toContain('sign, in the form of this step, with their own secret');
  });

  it('is not begun with oneself, signed or not', () => {
    const on = atLeak();
    expect(refused(on, on.mate('tech')).code).toBe('second-person-same');
    expect(refused(on, { second: actor('tech') }).code).toBe('second-person-same');
  });

  it('is not begun on the word of whoever does it: the one named has to sign', () => {
    const named = refused(atLeak(), { second: actor('mate') });
    expect(named.code).toBe('second-person-unsigned');
    expect([named.message, named.next].join()).toContain('Person mate is named');
    expect(named.next).toContain('Have Person mate read what is certified');
  });

  const scopes: [why: string, scope: Partial<Authorisation>, code: string][] = [
    ['of another operator', { operator: 'Other Air' }, 'authorisation-does-not-cover'],
    ['for another type', { aircraftTypes: ['INV-2'] }, 'authorisation-does-not-cover'],
    ['of another person', { person: 'third' }, 'authorisation-of-another-person'],
    ['that has run out', { validUntil: '2026-01-27T00:00Z' }, 'authorisation-not-valid-then'],
    ['that was revoked', { revokedAt: '2026-01-27T00:00Z' }, 'authorisation-not-valid-then'],
  ];
  it.each(scopes)('is not begun by the signature of somebody with an authorisation %s', (_, scope, code) => {
    const on = atLeak();
    expect(refused(on, on.mate('mate', { scope })).code).toBe(code);
  });

  it('asks for a category and a scope only where the card does', () => {
    const none = { licenceCategories: [], privileges: ['concur' as const] };
    const free = atLeak();
    expect(() => begin(free, free.mate('mate', { scope: none }))).not.toThrow();
    const b1 = atLeak({ licence: ['B1', 'B2'] });
    const unlicensed = refused(b1, b1.mate('mate', { scope: none }));
    expect(unlicensed.code).toBe('second-person-needs-licence');
    expect(unlicensed.message).toContain(
      'a second person with a licence of category B1 or B2; Person mate holds none',
    );
    expect(() => begin(b1, b1.mate())).not.toThrow();
    const inspects = atLeak({ privilege: 'inspect' });
    expect(refused(inspects, inspects.mate('mate', { scope: none })).code).toBe('authorisation-does-not-cover');
    expect(() => begin(inspects, inspects.mate())).not.toThrow();
  });

  it('keeps the signature with the step, which ends without another; nobody who helped inspects it', () => {
    const on = atLeak();
    begin(on, on.mate()).pass(5);
    on.step('leak', { kind: 'ran', readings: [{ id: 'case', value: 71, unit: 'C' }] });
    on.step('leak', { kind: 'looked', findings: 'dry' });
    expect(on.life.cards[0]?.steps.find((act) => act.step === 'leak')).toMatchObject({
      second: { person: 'mate', method: 'password', authorisation: { number: 'AUTH-mate' } },
    });
    expect(refusalOf(() => on.inspect('second', 'mate')).code).toBe('inspector-did-it');
    expect(() => on.inspect('second', 'third')).not.toThrow();
    expect(replay(on.life.acts)).toEqual(on.life);
  });

  it('uses up a one-off authorisation as any signature does', () => {
    const issuedBy = actor('control');
    const oneOff = { defect: 'D1', issuedBy, issuedAt: '2026-01-26T10:00Z', because: 'nobody else is here' };
    const on = atLeak();
    begin(on, on.mate('mate', { scope: { oneOff } })).pass(1);
    expect(refused(on, on.mate('mate', { scope: { oneOff } })).code).toBe('one-off-used');
    const other = atLeak();
    const elsewhere = other.mate('mate', { scope: { oneOff: { ...oneOff, defect: 'D2' } } });
    expect(refused(other, elsewhere).code).toBe('one-off-for-another-job');
  });
});
