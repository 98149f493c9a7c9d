/** Nothing is released or closed over a card that somebody started and nobody signed. 145.A.50(a). */
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';

/** Throws Refusal `cards-still-open`. */
export function noCardOpen(life: Pick<DefectLife, 'cards' | 'defect'>): void {
  const cards = openCards(life);
  if (cards.length > 0) throw new Refusal('cards-still-open', { defect: life.defect, cards });
}

/** Titles of the cards that are not signed. */
export const openCards = ({ cards }: Pick<DefectLife, 'cards'>): string[] =>
  cards.flatMap(({ started, ended }) => (ended === null ? [started.card.title] : []));
