/** A card that is stopped half-worked, and who had a hand in it. 145.A.50(e); 145.A.48; 14 CFR 121.371(c); 66.A.20(a). */
import { describe, expect, it } from 'vitest';
import {
  actor,
  authorisation,
  context,
  goneOver,
  refusalOf,
  settings,
  signed,
  writtenUp,
} from '../invented.fixture.js';
import type { LicenceCategory } from '../people.js';
import { inspect } from '../rectifying/inspect.js';
import { rectify } from '../rectifying/rectify.js';
import { release } from '../rectifying/release.js';
import { restore } from '../rectifying/restore.js';
import { proceed, replay } from '../replay.js';
import { Bench, card } from './cards.fixture.js';
import { stoppedHalfWorked } from './stopped-half-worked.js';

const begin = () => new Bench(writtenUp('2026-01-26T10:00Z'));

/** Brought to where only the release is missing. */
const ready = (on: Bench) => {
  const by = signed('tech', on.now);
  const life = proceed(on.life, restore(on.life, { id: 'back', by, reference: 'AMM' }, context(on.now)));
  return goneOver(life, by, on.now);
};

describe('a card that is stopped half-worked', () => {
  const stopped = () => {
    const on = begin().start({ card: card({ steps: card().steps.slice(2, 5) }) });
    on.step('cool', { kind: 'begun', minutes: 2 }).pass(2).step('cool', { kind: 'waited' });
    return on.stop('no seals in the store');
  };

  it('is work that is not complete, and says what of it is not done', () => {
    const { life } = stopped();
    expect(life.work?.done).toMatchObject([
      {
        complete: false,
        workDone:
          'Work card stopped: Change of the case-drain filter (no seals in the store). Not done: step 2 "Renew both seals"; step 3 "Read the level"',
      },
    ]);
    expect(replay(life.acts)).toEqual(life);
  });

  it('is named in the release as what stays open, and the item is not closed by it', () => {
    const on = stopped();
    const seen = goneOver(on.life, signed('tech', on.now), on.now);
    const out = (staysOpen: string[], outcome: 'closed' | 'stays-open' = 'stays-open') =>
      release(seen, { id: 'r', by: signed('tech', on.now), outcome, staysOpen }, context(on.now));
    expect(refusalOf(() => out([], 'closed')).code).toBe('work-not-complete');
    const unsaid = refusalOf(() => out(['the seals']), 'stopped-card-not-said');
    expect(unsaid.message).toContain('Change of the case-drain filter');
    expect(out(['Change of the case-drain filter: seals and level'])).toHaveLength(1);
  });

  it('is named no longer once the card was taken up again and signed', () => {
    const on = stopped();
    expect(stoppedHalfWorked(on.life)).toHaveLength(1);
    on.start().until().sign();
    expect(stoppedHalfWorked(on.life)).toEqual([]);
  });

  it('is no work where nothing of it was done', () => {
    expect(begin().start().stop().life.work).toBeNull();
  });
});

describe('whoever did a step of a card had a hand in the work', () => {
  /** Signed by `tech`, the seals renewed by `mate`. */
  const shared = (purpose: 'rectification' | 'restoration' = 'rectification') => {
    const on = begin().start({ card: card({ purpose, steps: card().steps.slice(3, 5) }) });
    on.step('seals', { kind: 'renewed', partNumber: 'S-1', batch: 'B-7', count: 2 }, 'mate');
    return on.step('level', { kind: 'measured', value: 3.5, unit: 'l' });
  };
  const b2: LicenceCategory[] = ['B2'];

  it('and does not inspect it independently afterwards, nor is their own case unforeseen under FAA rules', () => {
    const on = shared().sign();
    const looked = (person: string, unforeseen?: string) =>
      inspect(
        on.life,
        { id: 'i', by: signed(person, on.now), findings: 'none', ...(unforeseen && { unforeseen }) },
        context(on.now, { settings: settings({ ownInspection: 'never' }) }),
      );
    expect(refusalOf(() => looked('mate')).code).toBe('same-person-inspecting');
    expect(refusalOf(() => looked('mate', 'nobody else')).code).toBe('own-inspection-never');
    expect(looked('third')).toHaveLength(1);
  });

  it('so that a B2 licence does not release it as a minor task of its own', () => {
    const on = shared().sign({ by: signed('tech', '2026-01-27T08:00:00Z', { scope: { licenceCategories: b2 } }) });
    const by = signed('tech', on.now, { scope: { licenceCategories: b2 } });
    const seen = goneOver(on.life, by, on.now);
    const out = (asMinorTask: boolean) =>
      release(seen, { id: 'r', by, outcome: 'closed', asMinorTask }, context(on.now));
    expect(refusalOf(() => out(true), 'only-own-work').message).toContain('Person mate');
    expect(out(false)).toHaveLength(1);
  });

  it('on a card that was signed before anything else was done too', () => {
    const on = shared('restoration');
    const by = signed('tech', on.now);
    on.life = proceed(
      on.life,
      rectify(on.life, { id: 'w', by, workDone: 'x', reference: 'AMM', complete: true }, context(on.now)),
    );
    on.sign();
    const look = () => inspect(on.life, { id: 'i', by: signed('mate', on.now), findings: 'none' }, context(on.now));
    expect(refusalOf(look).code).toBe('same-person-inspecting');
    expect(ready(on).work?.verified).not.toBeNull();
  });
});

describe('a one-off authorisation on a card', () => {
  const oneOff = (defect: string) => {
    const issuedBy = actor('quality', { role: 'quality' });
    return { number: 'ONE-1', oneOff: { defect, issuedBy, issuedAt: '2026-01-27T07:00Z', because: 'nobody else' } };
  };
  const worked = (defect: string) => {
    const on = begin();
    const scope = oneOff(defect);
    const paper = authorisation('guest', scope);
    on.start({ by: actor('guest'), on: paper, card: card({ steps: card().steps.slice(3, 5) }) });
    on.step('seals', { kind: 'renewed', partNumber: 'S-1', batch: 'B-7', count: 2 }, 'guest', paper);
    on.step('level', { kind: 'measured', value: 3.5, unit: 'l' }, 'guest', paper);
    return { on, paper, sign: () => on.sign({ by: signed('guest', on.now, { scope }) }) };
  };

  it('stands for its steps and its signature, which writes the work as well', () => {
    const { on, sign } = worked('D1');
    sign();
    expect(on.life.work?.done).toMatchObject([{ by: { person: 'guest' }, complete: true }]);
    expect(replay(on.life.acts)).toEqual(on.life);
  });

  it('stands for nothing after that signature, not even a step', () => {
    const { on, paper, sign } = worked('D1');
    sign();
    on.pass(1);
    const again = () => on.start({ by: actor('guest'), on: paper });
    expect(refusalOf(again).code).toBe('one-off-used');
    const work = { workDone: 'x', reference: 'AMM', complete: true };
    const by = signed('guest', on.now, { scope: oneOff('D1') });
    expect(refusalOf(() => rectify(on.life, { id: 'w', by, ...work }, context(on.now))).code).toBe('one-off-used');
  });

  it('stands for no step of another job', () => {
    expect(refusalOf(() => worked('D2')).code).toBe('one-off-for-another-job');
  });
});
