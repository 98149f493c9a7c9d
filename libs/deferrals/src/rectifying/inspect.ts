/**
 * A second qualified person looks at the work: never one of those who did it. 145.A.48; 14 CFR 121.371(c). Published
 * requirement E-16 on electronic signatures.
 */
import type { Inspected } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';
import { needWork, seen } from './open-work.js';

export const inspected: ActRule<'inspected'> = {
  kind: 'inspected',
  privilege: 'inspect',
  admit(life, { by, findings }) {
    const { done } = needWork(life);
    needText('what the inspection found', findings);
    if (done.some((work) => work.by.person === by.person)) {
      throw new Refusal('same-person-inspecting', { name: by.name, defect: life.defect });
    }
  },
  changes: (life, act) => seen(life, { inspected: act }),
};

export interface Inspect extends Command {
  findings: string;
}

export function inspect(life: DefectLife, command: Inspect, context: Context): Inspected[] {
  const { findings } = command;
  return decided(inspected, life, { kind: 'inspected', ...headOf(command, context), defect: life.defect, findings });
}
