/** What a card counted out, the card counts in: nothing else undoes it or gives it away while the card is open. 145.A.48(a)(1). */
import type { DefectLife } from '../defect-life.js';
import { thingInWords } from '../leaving/left-items.js';
import { Refusal } from '../refusal.js';

/** Throws Refusal `counted-by-card`. */
export function notCountedByOpenCard(
  { cards, left }: Pick<DefectLife, 'cards' | 'left'>,
  ids: readonly string[],
): void {
  for (const { started, steps, ended } of cards) {
    const counted = steps.flatMap((act) =>
      act.kind === 'card-stepped' && act.result.kind === 'out' && act.result.item ? [act.result.item.id] : [],
    );
    const thing = left.find(({ id }) => ended === null && ids.includes(id) && counted.includes(id));
    if (thing) throw new Refusal('counted-by-card', { thing: thingInWords(thing), card: started.card.title });
  }
}
