/**
 * Somebody finds a thing on the aircraft that stands in no register. Anybody may say so; until it is undone or has an owner
 * the aircraft does not fly. 145.A.48; 145.A.50(a).
 */
import type { LeftItem } from '../act-parts.js';
import type { Context } from '../context.js';
import { admitLeft } from '../leaving/left-items.js';
import { notFittedElsewhere } from '../leaving/not-fitted-elsewhere.js';
import type { Actor, Signature } from '../people.js';
import { Refusal } from '../refusal.js';
import type { Found } from './acts.js';
import { itemsOf, type RegisterLife } from './register-life.js';
import { registered, registerHead, type RegisterCommand, type RegisterRule } from './register-rule.js';

export const found: RegisterRule<'found'> = {
  kind: 'found',
  privilege: null,
  admit(life, { items, aircraft }) {
    if (items.length === 0) throw new Refusal('text-missing', { what: 'what was found' });
    admitLeft({ left: itemsOf(life), defect: aircraft.registration }, items);
  },
  changes: ({ things }, { items }) => ({ things: [...things, ...items.map((item) => ({ item, owner: null }))] }),
};

export interface FindOnAircraft extends RegisterCommand<Actor | Signature> {
  items: LeftItem[];
  remarks?: string;
}

export function findOnAircraft(life: RegisterLife, command: FindOnAircraft, context: Context): Found[] {
  const { items, remarks = '' } = command;
  notFittedElsewhere(items, context);
  return registered(found, life, { kind: 'found', ...registerHead(command, context), items, remarks });
}
