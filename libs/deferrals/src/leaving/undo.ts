/** Somebody undid what was left on the aircraft, and signs for each thing. 145.A.48. */
import type { Undone } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { notCountedByOpenCard } from '../cards/counted-by-card.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { admitUndone, undo } from './left-items.js';
import { notNeededElsewhere } from './not-fitted-elsewhere.js';

export const undone: ActRule<'undone'> = {
  kind: 'undone',
  privilege: 'sign-procedure',
  admit(life, { items }) {
    admitUndone(life, items);
    notCountedByOpenCard(life, items);
  },
  changes: (life, { items }) => undo(life, items),
};

export interface UndoLeft extends Command {
  /** Ids of the things that were undone. */
  items: string[];
}

export function undoLeft(life: DefectLife, command: UndoLeft, context: Context): Undone[] {
  const { items } = command;
  notNeededElsewhere(items, context);
  return decided(undone, life, { kind: 'undone', ...headOf(command, context), defect: life.defect, items });
}
