/** Another shift, station or organisation answers for the defect. Its clock runs on. */
import type { HandedOver } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import type { Actor, Signature } from '../people.js';
import { needText } from './need-text.js';

export const handedOver: ActRule<'handed-over'> = {
  kind: 'handed-over',
  privilege: null,
  admit(_, { to }) {
    needText('who takes over', to);
  },
  changes: (_, { to }) => ({ heldBy: to }),
};

export interface HandOver extends Command<Actor | Signature> {
  to: string;
  note: string;
}

export function handOver(life: DefectLife, command: HandOver, context: Context): HandedOver[] {
  const { to, note } = command;
  return decided(handedOver, life, {
    kind: 'handed-over',
    ...headOf(command, context),
    defect: life.defect,
    to,
    note,
  });
}
