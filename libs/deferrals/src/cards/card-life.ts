/**
 * The work on one card under a defect.
 *
 * It begins when somebody starts the card, goes on step by step, and ends signed, with every step done and every pair
 * matched, or stopped with nothing of it left. While it is open the aircraft may not fly. It is its acts and nothing else.
 */
import type { CardInspected, CardSigned, CardStarted, CardStepped, CardStopped } from './card-acts.js';

export interface CardWork {
  started: CardStarted;
  steps: readonly (CardStepped | CardInspected)[];
  ended: CardSigned | CardStopped | null;
}
