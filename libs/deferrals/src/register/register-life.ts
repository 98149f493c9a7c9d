/**
 * What is left on one aircraft under something else than a defect, and who handed the whole register to whom.
 *
 * It begins empty. A thing enters it when it is fitted under a modification, a directive or a permit, when a defect gives
 * it over to one, or when somebody finds it and nobody knows whose it is. It leaves it undone and signed for, or given
 * over to a defect. Nothing is ever forgotten: the life is rebuilt from its acts alone, and each act makes a new one.
 */
import type { DocumentOwner } from '../act-base.js';
import type { LeftItem } from '../act-parts.js';
import type { RegisterAct, ShiftGiven, ShiftTaken, ThingCorrectionAsked } from './acts.js';

export interface RegisteredThing {
  item: LeftItem;
  /** Null for an orphan. */
  owner: DocumentOwner | null;
}

/** Undone, and no second person has looked yet. */
export interface UnseenRemoval {
  item: LeftItem;
  removedBy: string;
}

export interface RegisterLife {
  acts: readonly RegisterAct[];
  things: readonly RegisteredThing[];
  unseen: readonly UnseenRemoval[];
  asked: readonly ThingCorrectionAsked[];
  /** A hand-over that nobody has taken yet. */
  offered: ShiftGiven | null;
  lastTaken: { given: ShiftGiven; taken: ShiftTaken } | null;
}

export const EMPTY_REGISTER: RegisterLife = {
  acts: [],
  things: [],
  unseen: [],
  asked: [],
  offered: null,
  lastTaken: null,
};

export function itemsOf({ things }: Pick<RegisterLife, 'things'>): LeftItem[] {
  return things.map(({ item }) => item);
}
