/**
 * An approved reset with a good test is a rectification, and counts towards repeats. Without a good test the fault is
 * still there: an intermittent fault is inoperative. Common practice, no source.
 */
import type { ResetAndWatch } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';
import { admitAnswer, closedBy } from './admit-answer.js';

export const resetAndWatched: ActRule<'reset-and-watch'> = {
  kind: 'reset-and-watch',
  privilege: 'release',
  admit(life, { reference, test, result }) {
    admitAnswer(life);
    needText('the manual reference of the reset', reference);
    needText('the test after the reset', test);
    if (result !== 'good') throw new Refusal('reset-test-not-good', { defect: life.defect });
  },
  changes: (_, { by, enteredAt }) => closedBy('reset and watched', by, enteredAt),
};

export interface ResetAndWatchCommand extends Command {
  reference: string;
  test: string;
  result: ResetAndWatch['result'];
  /** What to look out for from now on. */
  watch: string;
}

export function resetAndWatch(life: DefectLife, command: ResetAndWatchCommand, context: Context): ResetAndWatch[] {
  const { reference, test, result, watch } = command;
  const said = { reference, test, result, watch };
  return decided(resetAndWatched, life, {
    kind: 'reset-and-watch',
    ...headOf(command, context),
    defect: life.defect,
    ...said,
  });
}
