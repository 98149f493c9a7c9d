/** A procedure names a card that is there, and what the procedure leaves on the aircraft is what the card leaves. */
import { rowPlaces } from '../checks/places.js';
import type { MelContent, Procedure } from '../content.js';
import type { Finding } from '../mel-error.js';
import type { Card } from './card.js';

export const procedureCardFindings = (content: MelContent): Finding[] => {
  const cards = new Map((content.cards ?? []).map((card) => [card.id, card]));
  return rowPlaces(content).flatMap(({ row, path }) =>
    (row.procedures ?? []).flatMap((procedure, at): Finding[] => {
      if (procedure.card === undefined) return [];
      const place = [...path, 'procedures', at, 'card'];
      const card = cards.get(procedure.card);
      if (!card) return [{ path: place, reason: `there is no card "${procedure.card}"` }];
      return leavesAlike(procedure, card).map((reason) => ({ path: place, reason }));
    }),
  );
};

function leavesAlike({ leaves }: Procedure, card: Card): string[] {
  const named = (leaves ?? []).map(({ kind, where }) => `${kind} at ${where}`);
  const left = (card.accounts ?? []).flatMap(({ over, kind, where }) =>
    over === 'stays' ? [`${kind ?? 'nothing'} at ${where}`] : [],
  );
  return [
    ...named.filter((one) => !left.includes(one)).map((one) => `card "${card.id}" does not leave ${one}`),
    ...left
      .filter((one) => !named.includes(one))
      .map((one) => `card "${card.id}" leaves ${one}, the procedure does not`),
  ];
}
