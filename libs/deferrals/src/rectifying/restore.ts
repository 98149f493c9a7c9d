/**
 * The system is back in its normal configuration. That cannot be signed while anything of the deferral is still left on
 * the aircraft. 145.A.48; 145.A.50(a).
 */
import type { Restored } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { nothingLeft } from '../leaving/left-items.js';
import { needText } from '../writing-up/need-text.js';
import { needWork, seen } from './open-work.js';

export const restored: ActRule<'restored'> = {
  kind: 'restored',
  privilege: 'sign-procedure',
  admit(life, { reference }) {
    needWork(life);
    needText('the manual reference of the restoration', reference);
    nothingLeft(life);
  },
  changes: (life, act) => seen(life, { restored: act }),
};

export interface Restore extends Command {
  reference: string;
}

export function restore(life: DefectLife, command: Restore, context: Context): Restored[] {
  const { reference } = command;
  return decided(restored, life, { kind: 'restored', ...headOf(command, context), defect: life.defect, reference });
}
