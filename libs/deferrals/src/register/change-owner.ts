/**
 * The owner of a thing changes, and both sides say so: a document takes over what a defect gives or what nobody owned, and
 * gives over to a defect what is its own. A document that ends leaves what is altered under it without an owner. 145.A.48.
 */
import type { DocumentOwner, Owner } from '../act-base.js';
import type { LeftItem } from '../act-parts.js';
import type { Context } from '../context.js';
import { admitLeft, admitUndone } from '../leaving/left-items.js';
import { ownerInWords } from '../leaving/owner-in-words.js';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';
import type { Adopted, DocumentEnded, HandedOn } from './acts.js';
import { admitDocument } from './fit-under-document.js';
import { itemsOf, type RegisteredThing, type RegisterLife } from './register-life.js';
import { registered, registerHead, type RegisterCommand, type RegisterRule } from './register-rule.js';

export const adopted: RegisterRule<'adopted'> = {
  kind: 'adopted',
  privilege: 'sign-procedure',
  admit(life, { items, owner, from, reason, enteredAt, aircraft }) {
    needText('why it belongs to the document', reason);
    admitDocument(owner, enteredAt);
    const others = from?.kind === 'defect' ? life.things : without(life.things, items);
    const ids = items.map(({ id }) => id);
    if (from?.kind !== 'defect') admitUndone({ left: itemsOf(life), defect: aircraft.registration }, ids);
    admitLeft({ left: others.map(({ item }) => item), defect: aircraft.registration }, items);
  },
  changes: ({ things }, { items, owner }) => ({
    things: [...without(things, items), ...items.map((item) => ({ item, owner }))],
  }),
};

export const handedOn: RegisterRule<'handed-on'> = {
  kind: 'handed-on',
  privilege: 'sign-procedure',
  admit(life, { items, to, reason, aircraft }) {
    needText('why it belongs to another', reason);
    admitUndone({ left: itemsOf(life), defect: aircraft.registration }, items);
    if (to.kind !== 'defect') throw new Refusal('moved-to-itself', { owner: ownerInWords(to) });
  },
  changes: ({ things }, { items }) => ({ things: things.filter(({ item }) => !items.includes(item.id)) }),
};

export const documentEnded: RegisterRule<'document-ended'> = {
  kind: 'document-ended',
  privilege: 'sign-procedure',
  admit({ things }, { owner, reason }) {
    needText('why the document ended', reason);
    if (things.some((thing) => isOf(thing, owner))) return;
    throw new Refusal('nothing-under-document', { document: ownerInWords(owner) });
  },
  changes: ({ things }, { owner }) => ({
    things: things.map((thing) => (isOf(thing, owner) ? { ...thing, owner: null } : thing)),
  }),
};

const isOf = (thing: RegisteredThing, { kind, reference }: DocumentOwner): boolean =>
  thing.owner?.kind === kind && thing.owner.reference === reference;

function without(things: readonly RegisteredThing[], items: readonly LeftItem[]): RegisteredThing[] {
  return things.filter(({ item }) => !items.some(({ id }) => id === item.id));
}

export interface Adopt extends RegisterCommand {
  items: LeftItem[];
  owner: DocumentOwner;
  from: Owner | null;
  reason: string;
}

export function adopt(life: RegisterLife, command: Adopt, context: Context): Adopted[] {
  const { items, owner, from, reason } = command;
  return registered(adopted, life, {
    kind: 'adopted',
    ...registerHead(command, context),
    items,
    owner,
    from,
    reason,
  });
}

export interface HandOn extends RegisterCommand {
  items: string[];
  to: Owner;
  reason: string;
}

export function handOn(life: RegisterLife, command: HandOn, context: Context): HandedOn[] {
  const { items, to, reason } = command;
  return registered(handedOn, life, { kind: 'handed-on', ...registerHead(command, context), items, to, reason });
}

export interface EndDocument extends RegisterCommand {
  owner: DocumentOwner;
  reason: string;
}

export function endDocument(life: RegisterLife, command: EndDocument, context: Context): DocumentEnded[] {
  const { owner, reason } = command;
  const head = registerHead(command, context);
  return registered(documentEnded, life, { kind: 'document-ended', ...head, owner, reason });
}
