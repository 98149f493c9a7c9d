/** Something is left altered under a modification, a directive or a permit: it belongs to that document. 145.A.48. */
import type { DocumentOwner } from '../act-base.js';
import type { LeftItem } from '../act-parts.js';
import type { Context } from '../context.js';
import { before } from '../instant.js';
import { admitLeft } from '../leaving/left-items.js';
import { notFittedElsewhere } from '../leaving/not-fitted-elsewhere.js';
import { ownerInWords } from '../leaving/owner-in-words.js';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';
import type { Fitted } from './acts.js';
import { itemsOf } from './register-life.js';
import { registered, registerHead, type RegisterCommand, type RegisterRule } from './register-rule.js';
import type { RegisterLife } from './register-life.js';

export const fitted: RegisterRule<'fitted'> = {
  kind: 'fitted',
  privilege: 'sign-procedure',
  admit(life, { items, owner, enteredAt, aircraft }) {
    admitDocument(owner, enteredAt);
    if (items.length === 0) throw new Refusal('text-missing', { what: 'what is left on the aircraft' });
    admitLeft({ left: itemsOf(life), defect: aircraft.registration }, items);
  },
  changes: ({ things }, { items, owner }) => ({ things: [...things, ...items.map((item) => ({ item, owner }))] }),
};

/** Throws Refusal `text-missing` or `document-over`. */
export function admitDocument(owner: DocumentOwner, at: string): void {
  needText('the number of the document', owner.reference);
  if (owner.until !== null && !before(at, owner.until)) {
    throw new Refusal('document-over', { document: ownerInWords(owner), until: owner.until });
  }
}

export interface FitUnderDocument extends RegisterCommand {
  items: LeftItem[];
  owner: DocumentOwner;
}

export function fitUnderDocument(life: RegisterLife, command: FitUnderDocument, context: Context): Fitted[] {
  const { items, owner } = command;
  notFittedElsewhere(items, context);
  return registered(fitted, life, { kind: 'fitted', ...registerHead(command, context), items, owner });
}
