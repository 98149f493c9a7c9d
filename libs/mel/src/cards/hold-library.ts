/**
 * A library of cards and an MEL are loaded one after the other, and each may leave the other behind. What would be read two
 * ways is refused at whichever comes second; what is only left without use, or without an undoing, is told.
 */
import type { MelContent } from '../content.js';
import type { Finding } from '../mel-error.js';
import type { Card } from './card.js';

/** Something about a card that holds nothing up, and that somebody should mend. */
export interface CardWarning {
  card: string;
  reason: string;
}

type WithCards = Pick<MelContent, 'entries' | 'cards'>;

/** A card is confirmed and started by its id alone, so the MEL and the library share none. @param where has the others */
export const sharedCardFindings = (cards: readonly Card[], others: readonly Card[], where: string): Finding[] =>
  cards.flatMap(({ id }, at) =>
    others.some((other) => other.id === id)
      ? [{ path: ['cards', at, 'id'], reason: `${where} has a card "${id}" too: one of them needs another id` }]
      : [],
  );

/** What of a library does not fit the MEL beside it, and what of that MEL no card of the library undoes. */
export const libraryWarnings = (library: readonly Card[], mel: WithCards): CardWarning[] => [
  ...library.flatMap((card) => entriesGone(card, mel)),
  ...(mel.cards ?? []).flatMap((card) => undoneByNone(card, library)),
];

function entriesGone({ id, title, entries }: Card, mel: WithCards): CardWarning[] {
  if (entries === undefined) return [];
  const gone = entries.filter((number) => !mel.entries.some((entry) => entry.number === number));
  if (gone.length === 0) return [];
  const rest = gone.length === entries.length ? ', so it is offered nowhere' : '';
  return [{ card: id, reason: `"${title}" is for ${gone.join(', ')}, which the MEL does not hold${rest}` }];
}

function undoneByNone({ id, title, accounts = [] }: Card, library: readonly Card[]): CardWarning[] {
  const found = library.flatMap((card) => (card.accounts ?? []).filter(({ over }) => over === 'found'));
  return accounts
    .filter(
      ({ over, kind, where }) => over === 'stays' && !found.some((one) => one.kind === kind && one.where === where),
    )
    .map(({ what, where }) => ({
      card: id,
      reason: `"${title}" leaves ${what} at ${where}, and no card of the library undoes it: it is undone at the item`,
    }));
}
