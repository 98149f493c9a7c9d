/** The write-up was checked by the manual and no fault was found. It counts towards repeats. 14 CFR 121.563. */
import type { NoFaultFound } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { needText } from '../writing-up/need-text.js';
import { admitAnswer, closedBy } from './admit-answer.js';

export const noFaultFound: ActRule<'no-fault-found'> = {
  kind: 'no-fault-found',
  privilege: 'release',
  admit(life, { checks, reference }) {
    admitAnswer(life);
    needText('what was checked', checks);
    needText('the manual reference of the checks', reference);
  },
  changes: (_, { by, enteredAt }) => closedBy('no fault found', by, enteredAt),
};

export interface FindNoFault extends Command {
  checks: string;
  reference: string;
}

export function findNoFault(life: DefectLife, command: FindNoFault, context: Context): NoFaultFound[] {
  const { checks, reference } = command;
  const head = headOf(command, context);
  return decided(noFaultFound, life, { kind: 'no-fault-found', ...head, defect: life.defect, checks, reference });
}
