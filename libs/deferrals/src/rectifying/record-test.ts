/** The item is tested after the work. A test that was not good is kept and leaves the work open. 145.A.50(a). */
import type { Tested } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { needText } from '../writing-up/need-text.js';
import { needWork, seen } from './open-work.js';

export const tested: ActRule<'tested'> = {
  kind: 'tested',
  privilege: 'sign-procedure',
  admit(life, { test }) {
    needWork(life);
    needText('what was tested', test);
  },
  changes: (life, act) => seen(life, { tested: act }),
};

export interface RecordTest extends Command {
  test: string;
  result: Tested['result'];
  readings?: string[];
}

export function recordTest(life: DefectLife, command: RecordTest, context: Context): Tested[] {
  const { test, result, readings } = command;
  const said = { test, result, readings: readings ?? [] };
  return decided(tested, life, { kind: 'tested', ...headOf(command, context), defect: life.defect, ...said });
}
