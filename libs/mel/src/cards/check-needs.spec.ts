/** What a step needs is held when it is done, so a card that nobody could hold is refused. The card is invented. */
import { describe, expect, it } from 'vitest';
import type { CardStep, Need } from './card.js';
import { loadCards } from './load-cards.js';
import { validCard, validLibrary } from './valid-cards.fixture.js';

const reasons = (step: string, needs: Need[], more: object = {}): string[] => {
  const card = validCard();
  const steps = card.steps.map((one) => (one.id === step ? ({ ...one, needs, ...more } as CardStep) : one));
  const loaded = loadCards({ ...validLibrary(), cards: [{ ...card, steps }] }, 'cards.yaml');
  return 'errors' in loaded ? loaded.errors.map(({ field, reason }) => `${field}: ${reason}`) : [];
};

const TIDY = '/cards/0/steps/6/needs';
const GAUGE: Need = { kind: 'equipment', what: 'gauge', calibrated: true };

describe('what a step needs', () => {
  it('may be supplies, calibrated equipment, and a second person with a licence or a privilege', () => {
    const second: Need = { kind: 'second-person', what: 'somebody', licence: ['B1'], privilege: 'inspect' };
    expect(reasons('tidy', [{ kind: 'supplies', what: 'gloves' }, GAUGE, second])).toEqual([]);
    expect(reasons('seal', [{ kind: 'part', what: 'seals' }], { certified: true })).toEqual([]);
  });

  it('is named once each, and one second person', () => {
    const second: Need = { kind: 'second-person', what: 'somebody' };
    expect(reasons('tidy', [GAUGE, GAUGE])).toEqual([
      `${TIDY}/1/what: within this step the equipment "gauge" stands here for a second time`,
    ]);
    expect(reasons('tidy', [second, { ...second, what: 'another' }])).toEqual([
      `${TIDY}/1: a step has one second person; make another step for a third`,
    ]);
  });

  const misplaced: [need: Need, where: string][] = [
    [{ kind: 'supplies', what: 'gloves', calibrated: true }, 'calibrated: only a tool or equipment is calibrated'],
    [{ kind: 'supplies', what: 'gloves', licence: ['A'] }, 'licence: only a second person holds a licence'],
    [
      { kind: 'equipment', what: 'rig', privilege: 'inspect' },
      'privilege: only a second person holds an authorisation',
    ],
    [{ kind: 'part', what: 'seal' }, 'kind: "seal" is a part, so a step that renews or counts out enters its number'],
  ];
  it.each(misplaced)('%o is refused where it cannot be held', (need, where) => {
    expect(reasons('tidy', [need])).toEqual([`${TIDY}/0/${where}`]);
  });

  it('of an inspection is nothing that is stated', () => {
    const look = '/cards/0/steps/7/needs/0/kind';
    expect(reasons('look', [GAUGE])).toEqual([
      `${look}: an inspection states no "gauge": use it in a step of its own`,
    ]);
    expect(reasons('look', [{ kind: 'second-person', what: 'somebody' }])).toHaveLength(1);
    expect(reasons('look', [{ kind: 'supplies', what: 'lamp' }])).toEqual([]);
  });
});
