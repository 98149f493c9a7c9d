/**
 * Who had a hand in the work that is open: who signed for it, who did a step of its work cards, who was the second person
 * of a step. None of them inspects it as an independent person. 145.A.48; 14 CFR 121.371(c).
 */
import { cardsOfOpenWork } from '../cards/cards-of-open-work.js';
import type { DefectLife } from '../defect-life.js';
import type { Actor } from '../people.js';

/** Each person once, in the order in which they came. */
export function performersOf(life: Pick<DefectLife, 'work' | 'cards' | 'acts'>): Actor[] {
  const ofCards = cardsOfOpenWork(life)
    .flatMap(({ steps }) => steps)
    .flatMap((act) => (act.kind === 'card-stepped' ? [act.by, ...(act.second ? [act.second] : [])] : []));
  const all: Actor[] = [...(life.work?.done.map(({ by }) => by) ?? []), ...ofCards];
  return all.filter(({ person }, at) => all.findIndex((one) => one.person === person) === at);
}
