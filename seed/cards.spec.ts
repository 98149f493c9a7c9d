/** The demo's work cards: what a demonstration needs of them. */
import { describe, expect, it } from 'vitest';
import { cardsAgainstMel, loadCards, loadMel, type Card } from '#mel';
import { readSeedFile } from './seed-files.js';

const folder = import.meta.dirname;
const mel = loadMel(readSeedFile(folder, 'mel.yaml'), 'mel.yaml');
const library = loadCards(readSeedFile(folder, 'cards.yaml'), 'cards.yaml');
const ofMel: readonly Card[] = 'mel' in mel ? (mel.mel.content.cards ?? []) : [];
const ofLibrary: readonly Card[] = 'library' in library ? library.library.cards : [];
const cards = [...ofMel, ...ofLibrary];

describe("the demo's work cards", () => {
  it('load, without an error', () => {
    expect('errors' in mel ? mel.errors : []).toEqual([]);
    expect('errors' in library ? library.errors : []).toEqual([]);
  });

  it('are offered for entries that the MEL has', () => {
    if (!('mel' in mel) || !('library' in library)) throw new Error('they do not load');
    expect(cardsAgainstMel(library.library, mel.mel.content, 'cards.yaml')).toEqual([]);
  });

  it('are at least twelve, and say that the manual prevails', () => {
    expect(cards.length).toBeGreaterThanOrEqual(12);
    expect(cards.filter(({ cautions }) => !cautions?.some((one) => one.includes('manual prevails')))).toEqual([]);
  });

  it('hold every kind of step', () => {
    const kinds = new Set(cards.flatMap(({ steps }) => steps.map(({ kind }) => kind)));
    expect([...kinds].toSorted()).toEqual([
      'do',
      'in',
      'inspect',
      'measure',
      'out',
      'renew',
      'run',
      'verify',
      'wait',
    ]);
  });

  it('undo by a library card what a card of the MEL leaves on the aircraft, but for the APU that is removed', () => {
    const left = (over: 'stays' | 'found', of: readonly Card[]) =>
      of.flatMap(({ accounts = [] }) =>
        accounts.filter((one) => one.over === over).map(({ kind, where }) => `${kind} ${where}`),
      );
    const undone = left('found', ofLibrary);
    expect(left('stays', ofMel).filter((one) => !undone.includes(one) && !one.includes('tail cone'))).toEqual([]);
  });
});
