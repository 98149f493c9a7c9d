/**
 * Work is done on the defect. Until it is released the aircraft may not fly. What was tested, inspected or restored
 * before this piece of work no longer counts. 145.A.50(a).
 */
import type { Part, Rectification } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { needText } from '../writing-up/need-text.js';
import { listAsksInspection } from './inspection-asked.js';

export const rectification: ActRule<'rectification'> = {
  kind: 'rectification',
  privilege: 'sign-procedure',
  admit(_, { workDone, reference }) {
    needText('what was done', workDone);
    needText('the manual reference of the work', reference);
  },
  changes: ({ work }, act) => ({
    work: {
      openedAt: work?.openedAt ?? act.recordedAt,
      done: [...(work?.done ?? []), act],
      tested: null,
      inspected: null,
      restored: null,
      verified: null,
    },
  }),
};

export interface Rectify extends Command {
  workDone: string;
  parts?: Part[];
  reference: string;
  complete: boolean;
  testAsked?: boolean;
  inspectionAsked?: boolean;
}

export function rectify(life: DefectLife, command: Rectify, context: Context): Rectification[] {
  const { workDone, parts, reference, complete, testAsked, inspectionAsked } = command;
  return decided(rectification, life, {
    kind: 'rectification',
    ...headOf(command, context),
    defect: life.defect,
    workDone,
    parts: parts ?? [],
    reference,
    complete,
    testAsked: testAsked ?? false,
    inspectionAsked: (inspectionAsked ?? false) || listAsksInspection(life, context.settings) !== null,
  });
}
