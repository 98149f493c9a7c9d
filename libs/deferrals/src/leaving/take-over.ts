/**
 * A thing that is on the aircraft already belongs to this defect from now on: because its own work needs it there too, or
 * because another owner gives it over. Nothing changes hands without both sides saying so. 145.A.48.
 */
import type { LeftItem, Owner, TakenOver } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';
import { admitRemoval } from './admit-removal.js';
import { admitLeft, leave } from './left-items.js';

export const takenOver: ActRule<'taken-over'> = {
  kind: 'taken-over',
  privilege: 'sign-procedure',
  admit(life, { items, reason }) {
    needText('why it belongs to this defect', reason);
    if (items.length === 0) throw new Refusal('text-missing', { what: 'what is taken over' });
    admitLeft(life, items);
    admitRemoval(life.defect, life.deferral?.basis ?? null, items);
  },
  changes: (life, { items }) => leave(life, items),
};

export interface TakeOver extends Command {
  items: LeftItem[];
  from: Owner | null;
  together: boolean;
  reason: string;
}

/** Throws Refusal `left-item-unknown` when one of the things is not on the aircraft under that owner. */
export function takeOver(life: DefectLife, command: TakeOver, context: Context): TakenOver[] {
  const { items, from, together, reason } = command;
  const said = { items, from, together, reason };
  return decided(takenOver, life, { kind: 'taken-over', ...headOf(command, context), defect: life.defect, ...said });
}
