/** The same defect on another sheet or check. Nothing of its clock changes: its day is that of the first record. */
import type { ReEntered } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import type { Actor, Signature } from '../people.js';
import { needText } from './need-text.js';

export const reEntered: ActRule<'re-entered'> = {
  kind: 're-entered',
  privilege: null,
  admit(_, { sheet, reason }) {
    needText('the number of the new sheet', sheet);
    needText('the reason for the new entry', reason);
  },
  changes: (_, { sheet }) => ({ sheet }),
};

export interface ReEnter extends Command<Actor | Signature> {
  sheet: string;
  reason: string;
}

export function reEnter(life: DefectLife, command: ReEnter, context: Context): ReEntered[] {
  const { sheet, reason } = command;
  const head = headOf(command, context);
  return decided(reEntered, life, { kind: 're-entered', ...head, defect: life.defect, sheet, reason });
}
