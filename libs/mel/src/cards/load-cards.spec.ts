/** Work cards as they are loaded. That everything opened is closed or registered: 145.A.48. */
import { describe, expect, it } from 'vitest';
import { loadMel } from '../load-mel.js';
import { validMel } from '../valid-mel.fixture.js';
import type { Card, CardLibraryContent } from './card.js';
import { cardsAgainstMel } from './check-entries.js';
import { loadCards, readCards } from './load-cards.js';
import { validCard, validLibrary } from './valid-cards.fixture.js';

/** The findings of a library that differs from a valid one in one place of its card. */
function against(change: (card: Card) => void): string[] {
  const library: CardLibraryContent = validLibrary();
  for (const card of library.cards) change(card);
  const loaded = loadCards(library, 'cards.yaml');
  return 'errors' in loaded
    ? loaded.errors.map(({ card, step, reason }) => `${card ?? '-'}/${step ?? '-'}: ${reason}`)
    : [];
}

const stepOf = (card: Card, id: string) => card.steps.find((step) => step.id === id) ?? card.steps[0]!;
const accountOf = (card: Card, id: string) =>
  card.accounts?.find((account) => account.id === id) ?? card.accounts![0]!;
const without = (card: Card, id: string): void => {
  card.steps = card.steps.filter((step) => step.id !== id);
};

/** The step that needs a torque wrench, which is issued before it and returned after it. */
function tooled(card: Card): Card['steps'][number] {
  const wrench = { id: 'wrench', pair: 'issue-return', what: 'torque wrench', where: 'left nacelle' } as const;
  card.accounts?.push({ ...wrench, kind: 'tool', numbered: true, undo: 'return it' });
  const tighten = {
    id: 'tighten',
    kind: 'do',
    text: 'Tighten.',
    needs: [{ kind: 'tool', what: 'torque wrench', account: 'wrench' }],
  } satisfies Card['steps'][number];
  card.steps.push({ id: 'wrench-out', kind: 'out', text: 'Take it.', account: 'wrench' }, tighten);
  card.steps.push({ id: 'wrench-in', kind: 'in', text: 'Bring it back.', account: 'wrench' });
  return stepOf(card, 'tighten');
}

describe('a library of work cards', () => {
  it('may need a tool that is issued before the step and returned after it', () => {
    expect(against((card) => void tooled(card))).toEqual([]);
  });

  it('is offered for entries that the MEL has, and names file, card and place of one that it has not', () => {
    const library = validLibrary();
    expect(cardsAgainstMel(library, validMel(), 'cards.yaml')).toEqual([]);
    Object.assign(library.cards[0]!, { entries: ['32-42-01', '32-42-10'] });
    expect(cardsAgainstMel(library, validMel(), 'cards.yaml')).toEqual([
      {
        file: 'cards.yaml',
        entry: null,
        card: 'filter',
        field: '/cards/0/entries/1',
        reason: 'there is no entry "32-42-10" in the MEL',
      },
    ]);
  });

  it('loads whole, and cannot be changed afterwards', () => {
    const loaded = loadCards(validLibrary(), 'cards.yaml');
    if ('errors' in loaded) throw new Error(JSON.stringify(loaded.errors));
    expect(loaded.library.cards).toHaveLength(1);
    expect(Object.isFrozen(loaded.library.cards[0]?.steps[0])).toBe(true);
  });

  it('is read from YAML and from JSON alike', () => {
    expect('library' in readCards(JSON.stringify(validLibrary()), 'cards.json')).toBe(true);
    expect(readCards('{', 'cards.yaml')).toMatchObject({ errors: [{ file: 'cards.yaml', field: '' }] });
  });

  it('names file, card, step, field and reason of an error', () => {
    const library = validLibrary();
    stepOf(library.cards[0]!, 'pressure').text = ' ';
    const loaded = loadCards(library, 'cards.yaml');
    expect(loaded).toMatchObject({
      errors: [{ file: 'cards.yaml', entry: null, card: 'filter', step: 'pressure', field: '/cards/0/steps/4/text' }],
    });
  });

  it.each<[string, (card: Card) => void, string]>([
    [
      'a panel is opened and never closed',
      (card) => without(card, 'close'),
      'is open in step "open" and never closed',
    ],
    ['a panel is closed and never opened', (card) => without(card, 'open'), 'is never open'],
    [
      'a panel may be closed before it is opened',
      (card) => (stepOf(card, 'close').after = []),
      'may be closed in step "close" before it is open in step "open"',
    ],
    [
      'what stays on the aircraft is counted in',
      (card) => (accountOf(card, 'panel').over = 'stays'),
      'stays, and yet step "close" counts it in',
    ],
    [
      'what an earlier card left is counted out',
      (card) => (accountOf(card, 'panel').over = 'found'),
      'was left by an earlier card',
    ],
    ['what stays is not registered', (card) => delete accountOf(card, 'panel').kind, 'has a number of its own'],
    ['the register is not told how it is undone', (card) => delete accountOf(card, 'panel').undo, 'how "panel'],
    [
      'an account is counted twice',
      (card) => card.steps.push({ id: 'again', kind: 'out', text: 'Open.', account: 'panel' }),
      'is counted more than once',
    ],
    [
      'an account is not kept',
      (card) => card.steps.push({ id: 'more', kind: 'out', text: 'Open.', account: 'none' }),
      'keeps no account "none"',
    ],
    [
      'a step stands twice',
      (card) => card.steps.push({ ...stepOf(card, 'seal') }),
      'the step "seal" stands here for a second time',
    ],
    [
      'a step waits for one that comes later',
      (card) => (stepOf(card, 'open').after = ['close']),
      'does not stand before this one',
    ],
    [
      'a step waits for one that is not there',
      (card) => (stepOf(card, 'open').after = ['nowhere']),
      'has no step "nowhere"',
    ],
    [
      'a measure has no limits',
      (card) => Object.assign(stepOf(card, 'pressure'), { measure: { id: 'p', what: 'pressure', unit: 'bar' } }),
      'gives no limit',
    ],
    [
      'the limits leave no value',
      (card) =>
        Object.assign(stepOf(card, 'pressure'), {
          measure: { id: 'p', what: 'pressure', unit: 'bar', from: 3, to: 2 },
        }),
      'leave no value',
    ],
    [
      'an inspection looks at what need not be done by then',
      (card) => (stepOf(card, 'look').after = []),
      'name it in "after"',
    ],
    [
      'an inspection inspects itself',
      (card) => Object.assign(stepOf(card, 'look'), { of: ['look'] }),
      'does not stand before',
    ],
    [
      'the day of the revision is none',
      (card) => (card.reference.issuedOn = '2026-02-30'),
      'is not a day of the calendar',
    ],
    [
      'a card for a procedure stands in a library',
      (card) => (card.purpose = 'procedure'),
      'does not stand in a library',
    ],
    [
      'a tool is needed that no account issues',
      (card) => (stepOf(card, 'seal').needs = [{ kind: 'tool', what: 'pick' }]),
      '"pick" is a tool, so an account issues and returns it',
    ],
    [
      'a tool is counted as something else',
      (card) => (stepOf(card, 'seal').needs = [{ kind: 'tool', what: 'pick', account: 'panel' }]),
      '"panel" is no account that issues and returns a numbered tool',
    ],
    [
      'a tool need not be issued before it is needed',
      (card) => (tooled(card).after = []),
      '"torque wrench" need not be issued before this step',
    ],
    [
      'a tool may be returned before it was needed',
      (card) => (tooled(card), (stepOf(card, 'wrench-in').after = ['wrench-out'])),
      '"torque wrench" may be returned before this step',
    ],
    [
      'something else than a tool has an account',
      (card) => (stepOf(card, 'seal').needs = [{ kind: 'part', what: 'seals', account: 'panel' }]),
      'only a tool has an account',
    ],
    [
      'a kind of step is not known',
      (card) => Object.assign(stepOf(card, 'open'), { kind: 'skip' }),
      'must be one of do, verify',
    ],
    [
      'a wait lasts no time',
      (card) => Object.assign(stepOf(card, 'cool'), { lasts: { minutes: 0 } }),
      'must be >= 1',
    ],
    [
      'a key is not known',
      (card) => Object.assign(stepOf(card, 'open'), { optional: true }),
      '"optional" is not known',
    ],
  ])('is refused when %s', (_, change, said) => {
    const findings = against(change);
    expect(findings.join('\n')).toContain(said);
    expect(findings.every((finding) => finding.startsWith('filter/'))).toBe(true);
  });
});

describe('a card that a procedure names', () => {
  const withCard = (card: Card, leaves: object[] = []) => {
    const content = validMel();
    const procedure = content.entries[0]?.subEntries[0]?.rows[0]?.procedures?.[0];
    Object.assign(procedure!, { card: 'filter', ...(leaves.length > 0 ? { leaves } : {}) });
    return loadMel({ ...content, cards: [{ ...card, purpose: 'procedure' }] }, 'mel.yaml');
  };
  const leaves = { kind: 'panel-open', where: 'left nacelle', undo: 'close it' };
  const staying = (): Card => {
    const card = validCard();
    accountOf(card, 'panel').over = 'stays';
    card.steps = card.steps.filter(({ id }) => id !== 'close');
    stepOf(card, 'latch').after = ['leak'];
    return card;
  };

  it('loads when both leave the same on the aircraft', () => {
    expect(withCard(staying(), [leaves])).toHaveProperty('mel');
    expect(withCard(validCard())).toHaveProperty('mel');
  });

  it('is refused when one leaves more than the other', () => {
    expect(withCard(staying())).toMatchObject({
      errors: [{ entry: '32-42-01', reason: expect.stringContaining('the procedure does not') }],
    });
    expect(withCard(validCard(), [leaves])).toMatchObject({
      errors: [{ reason: 'card "filter" does not leave panel-open at left nacelle' }],
    });
  });

  it('is refused when it is offered for an entry that the MEL has not', () => {
    expect(withCard({ ...validCard(), entries: ['32-42-01', '99-00-00'] })).toMatchObject({
      errors: [
        {
          file: 'mel.yaml',
          card: 'filter',
          field: '/cards/0/entries/1',
          reason: 'there is no entry "99-00-00" in the MEL',
        },
      ],
    });
  });

  it('is refused when it is not there', () => {
    expect(withCard({ ...validCard(), id: 'other' })).toMatchObject({
      errors: [{ reason: 'there is no card "filter"' }],
    });
  });
});
