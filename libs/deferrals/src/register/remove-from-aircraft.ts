/** Things of the register are undone and signed for; another person may look and sign that they are. 145.A.48. */
import type { Context } from '../context.js';
import { admitUndone } from '../leaving/left-items.js';
import { notNeededElsewhere } from '../leaving/not-fitted-elsewhere.js';
import { Refusal } from '../refusal.js';
import type { RemovalSeen, Removed } from './acts.js';
import { itemsOf, type RegisterLife } from './register-life.js';
import { registered, registerHead, type RegisterCommand, type RegisterRule } from './register-rule.js';

export const removed: RegisterRule<'removed'> = {
  kind: 'removed',
  privilege: 'sign-procedure',
  admit(life, { items, aircraft }) {
    admitUndone({ left: itemsOf(life), defect: aircraft.registration }, items);
  },
  changes: ({ things, unseen }, { items, by }) => ({
    things: things.filter(({ item }) => !items.includes(item.id)),
    unseen: [
      ...unseen,
      ...things.flatMap(({ item }) => (items.includes(item.id) ? [{ item, removedBy: by.person }] : [])),
    ],
  }),
};

export const removalSeen: RegisterRule<'removal-seen'> = {
  kind: 'removal-seen',
  privilege: 'sign-procedure',
  admit({ unseen }, { items, by, aircraft }) {
    admitUndone({ left: unseen.map(({ item }) => item), defect: aircraft.registration }, items);
    const own = unseen.some(({ item, removedBy }) => items.includes(item.id) && removedBy === by.person);
    if (own) throw new Refusal('same-person-looking', { name: by.name });
  },
  changes: ({ unseen }, { items }) => ({ unseen: unseen.filter(({ item }) => !items.includes(item.id)) }),
};

export interface OnItems extends RegisterCommand {
  items: string[];
}

export function removeFromAircraft(life: RegisterLife, command: OnItems, context: Context): Removed[] {
  const { items } = command;
  notNeededElsewhere(items, context);
  return registered(removed, life, { kind: 'removed', ...registerHead(command, context), items });
}

export function seeRemoval(life: RegisterLife, command: OnItems, context: Context): RemovalSeen[] {
  const { items } = command;
  return registered(removalSeen, life, { kind: 'removal-seen', ...registerHead(command, context), items });
}
