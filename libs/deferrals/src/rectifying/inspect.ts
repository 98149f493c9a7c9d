/**
 * A second qualified person looks at the work: not one of those who did it. 145.A.48; 14 CFR 121.371(c). Published
 * requirement E-16 on electronic signatures.
 *
 * Where the operator's rules know the unforeseen case, one who did the work may inspect it again alone, and why is recorded
 * with the inspection (145.A.48, AMC4, from memory). Under 14 CFR 121.371(c) there is no such case.
 */
import type { Inspected } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';
import { needWork, seen } from './open-work.js';
import { performersOf } from './performers.js';

export const inspected: ActRule<'inspected'> = {
  kind: 'inspected',
  privilege: 'inspect',
  admit(life, { by, findings, unforeseen }) {
    needWork(life);
    needText('what the inspection found', findings);
    if (unforeseen !== undefined) needText('why nobody else could inspect', unforeseen);
    else if (performersOf(life).some(({ person }) => person === by.person)) {
      throw new Refusal('same-person-inspecting', { name: by.name, defect: life.defect });
    }
  },
  changes: (life, act) => seen(life, { inspected: act }),
};

export interface Inspect extends Command {
  findings: string;
  /** Why one of those who did the work inspects it. */
  unforeseen?: string;
}

export function inspect(life: DefectLife, command: Inspect, context: Context): Inspected[] {
  const { findings, unforeseen, by } = command;
  const own = performersOf(life).some(({ person }) => person === by.person);
  if (own && unforeseen !== undefined && context.settings.ownInspection === 'never') {
    throw new Refusal('own-inspection-never', { name: by.name, defect: life.defect });
  }
  const said = { findings, ...(own && unforeseen !== undefined ? { unforeseen } : {}) };
  return decided(inspected, life, { kind: 'inspected', ...headOf(command, context), defect: life.defect, ...said });
}
