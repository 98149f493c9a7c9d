/** A library and an MEL that were loaded one after the other. Invented. */
import { describe, expect, it } from 'vitest';
import { validMel } from '../valid-mel.fixture.js';
import type { Card } from './card.js';
import { cardsAgainstMel } from './check-entries.js';
import { libraryWarnings, sharedCardFindings } from './hold-library.js';
import { validCard, validLibrary } from './valid-cards.fixture.js';

const entries = validMel().entries;
const [first] = entries;
const pin = { id: 'pin', pair: 'fit-remove', what: 'lock pin', where: 'left gear', kind: 'lock-pin' } as const;
const stays: Card = { ...validCard(), id: 'lock', title: 'Gear locked', accounts: [{ ...pin, over: 'stays' }] };
const found: Card = { ...validCard(), id: 'unlock', accounts: [{ ...pin, over: 'found' }], entries: [] };

describe('a library beside an MEL', () => {
  it('fits where every entry is there', () => {
    expect(libraryWarnings([{ ...validCard(), entries: [first!.number] }], { entries })).toEqual([]);
    const { entries: _, ...anywhere } = validCard();
    expect(libraryWarnings([anywhere], { entries })).toEqual([]);
  });

  it('is told of each entry that is gone, and whether the card is still offered', () => {
    const card = validCard();
    expect(libraryWarnings([{ ...card, entries: [first!.number, '99-99-99'] }], { entries })).toEqual([
      { card: 'filter', reason: `"${card.title}" is for 99-99-99, which the MEL does not hold` },
    ]);
    expect(libraryWarnings([{ ...card, entries: ['99-99-98', '99-99-99'] }], { entries })).toEqual([
      {
        card: 'filter',
        reason: `"${card.title}" is for 99-99-98, 99-99-99, which the MEL does not hold, so it is offered nowhere`,
      },
    ]);
  });

  it('is told of what a card of the MEL leaves and no card of the library undoes', () => {
    expect(libraryWarnings([found], { entries, cards: [stays] })).toEqual([]);
    const other: Card = { ...found, accounts: [{ ...pin, where: 'right gear', over: 'found' }] };
    for (const library of [[], [other], [stays]]) {
      expect(libraryWarnings(library, { entries, cards: [stays] }).at(-1)).toEqual({
        card: 'lock',
        reason:
          '"Gear locked" leaves lock pin at left gear, and no card of the library undoes it: it is undone at the item',
      });
    }
  });

  it('shares no id with it, in either direction', () => {
    const card = { ...validCard(), entries: [first!.number] };
    const reason = 'the MEL has a card "filter" too: one of them needs another id';
    const [error] = cardsAgainstMel(
      { ...validLibrary(), cards: [card] },
      { entries, cards: [validCard()] },
      'c.yaml',
    );
    expect(error).toMatchObject({ file: 'c.yaml', card: 'filter', field: '/cards/0/id', reason });
    expect(sharedCardFindings([stays], [found], 'the library of cards')).toEqual([]);
    expect(sharedCardFindings([stays, found], [found], 'the library of cards')).toMatchObject([
      { path: ['cards', 1, 'id'] },
    ]);
  });
});
