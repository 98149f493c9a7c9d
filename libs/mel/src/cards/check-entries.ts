/** The entries that a card is offered for are entries of the MEL: a mistyped one would offer the card for nothing. */
import type { MelContent } from '../content.js';
import { errorsOf, type Finding, type MelError } from '../mel-error.js';
import type { Card, CardLibraryContent } from './card.js';
import { sharedCardFindings } from './hold-library.js';

export const cardEntryFindings = (cards: readonly Card[], mel: Pick<MelContent, 'entries'>): Finding[] => {
  const known = new Set(mel.entries.map(({ number }) => number));
  return cards.flatMap(({ entries = [] }, card) =>
    entries.flatMap((number, at) =>
      known.has(number)
        ? []
        : [{ path: ['cards', card, 'entries', at], reason: `there is no entry "${number}" in the MEL` }],
    ),
  );
};

/** A library stands in a file of its own, so it is held against the MEL when both are there. `file` names it in errors. */
export const cardsAgainstMel = (
  library: CardLibraryContent,
  mel: Pick<MelContent, 'entries' | 'cards'>,
  file: string,
): MelError[] =>
  errorsOf(file, library, [
    ...cardEntryFindings(library.cards, mel),
    ...sharedCardFindings(library.cards, mel.cards ?? [], 'the MEL'),
  ]);
