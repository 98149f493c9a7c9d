import type { DefectLife } from '../defect-life.js';
import type { CardWork } from './card-life.js';

/** The cards that were signed or stopped as part of the work that is open: since its first act, or as that act. */
export function cardsOfOpenWork({ cards, work, acts }: Pick<DefectLife, 'cards' | 'work' | 'acts'>): CardWork[] {
  const [first] = work?.done ?? [];
  if (first === undefined) return [];
  // The end of a card is written just before the work that it is.
  const begins = acts.findIndex(({ id }) => id === first.id) - 1;
  const since = new Set(acts.slice(begins).map(({ id }) => id));
  return cards.filter(({ started, ended }) => started.procedure === null && ended !== null && since.has(ended.id));
}
