/** Cards that were begun and stopped, and whose work nobody took up again: what a release states as incomplete. 145.A.50(e). */
import { doneBy, stepInWords } from './card-work.js';
import type { DefectLife } from '../defect-life.js';
import type { CardWork } from './card-life.js';
import { cardsOfOpenWork } from './cards-of-open-work.js';

/** A card of a procedure is not among them: the procedure stays owed, and the answer says so. */
export const leavesWork = ({ started, steps }: CardWork): boolean => started.procedure === null && steps.length > 0;

/** In the work that is open now, and not taken up again since. */
export function stoppedHalfWorked(life: Pick<DefectLife, 'cards' | 'work' | 'acts'>): CardWork[] {
  return cardsOfOpenWork(life).filter(
    (one) => one.ended?.kind === 'card-stopped' && leavesWork(one) && !isTakenUp(one, life.cards),
  );
}

function isTakenUp({ started }: CardWork, cards: readonly CardWork[]): boolean {
  const at = cards.findIndex((one) => one.started.id === started.id);
  return cards
    .slice(at + 1)
    .some((one) => one.started.card.id === started.card.id && one.ended?.kind === 'card-signed');
}

/** A line of a release is read by people. */
const MOST_NAMED = 5;

/** "Work card stopped: Filter changed (nobody relieves me). Not done: step 11 "Tighten the bowl"; ..." */
export function stoppedInWords(work: CardWork, reason: string): string {
  const { card } = work.started;
  const missing = card.steps
    .filter((step) => doneBy(work, step) === undefined)
    .map((step) => `step ${stepInWords(card, step)}`);
  const more = missing.length > MOST_NAMED ? [`and ${missing.length - MOST_NAMED} more steps`] : [];
  return `Work card stopped: ${card.title} (${reason}). Not done: ${[...missing.slice(0, MOST_NAMED), ...more].join('; ')}`;
}
