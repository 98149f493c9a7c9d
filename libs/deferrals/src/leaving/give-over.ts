/** Things belong to this defect no longer: another owner has taken them over, and they stay on the aircraft. 145.A.48. */
import type { GivenOver, Owner } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { notCountedByOpenCard } from '../cards/counted-by-card.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';
import { admitUndone, undo } from './left-items.js';

export const givenOver: ActRule<'given-over'> = {
  kind: 'given-over',
  privilege: 'sign-procedure',
  admit(life, { items, to, reason }) {
    needText('why it belongs to another', reason);
    admitUndone(life, items);
    notCountedByOpenCard(life, items);
    if (to.kind === 'defect' && to.defect === life.defect) throw new Refusal('moved-to-itself', { owner: to.defect });
  },
  changes: (life, { items }) => undo(life, items),
};

export interface GiveOver extends Command {
  items: string[];
  to: Owner;
  reason: string;
}

export function giveOver(life: DefectLife, command: GiveOver, context: Context): GivenOver[] {
  const { items, to, reason } = command;
  const head = headOf(command, context);
  return decided(givenOver, life, { kind: 'given-over', ...head, defect: life.defect, items, to, reason });
}
