/** The write-up should never have been made. It stays readable, with the reason. 14 CFR 121.563; AMC M.A.305(e). */
import type { RaisedInError } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { needText } from '../writing-up/need-text.js';
import { admitAnswer, closedBy } from './admit-answer.js';

export const raisedInError: ActRule<'raised-in-error'> = {
  kind: 'raised-in-error',
  privilege: 'release',
  admit(life, { reason }) {
    admitAnswer(life);
    needText('why it was raised in error', reason);
  },
  changes: (_, { by, enteredAt }) => closedBy('raised in error', by, enteredAt),
};

export interface RaiseInError extends Command {
  reason: string;
}

export function raiseInError(life: DefectLife, command: RaiseInError, context: Context): RaisedInError[] {
  const { reason } = command;
  const head = headOf(command, context);
  return decided(raisedInError, life, { kind: 'raised-in-error', ...head, defect: life.defect, reason });
}
