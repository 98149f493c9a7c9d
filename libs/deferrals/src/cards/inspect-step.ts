/**
 * An independent inspection on a card: a second qualified person looks and signs, never one who did what is inspected.
 * 145.A.48(a)(2); 14 CFR 121.371(c).
 */
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';
import { admitStep } from './admit-step.js';
import type { CardInspected } from './card-acts.js';
import { actsOn, ASKED, isStep, needCard, needStep, stepInWords, withCard } from './card-work.js';
import { hadAHand } from './second-person.js';

export const cardInspected: ActRule<'card-inspected'> = {
  kind: 'card-inspected',
  privilege: 'inspect',
  admit(life, { work: workId, step: stepId, by, findings }) {
    const work = needCard(life, workId);
    const { card } = work.started;
    const step = needStep(card, stepId);
    const named = stepInWords(card, step);
    if (!isStep(step, 'inspect')) {
      throw new Refusal('step-done-otherwise', { step: named, asked: ASKED[step.kind], given: 'an inspection' });
    }
    admitStep(work, step, by, by.authorisation);
    needText('what the inspection found', findings);
    const own = step.of.filter((id) => actsOn(work, id).some((act) => hadAHand(act, by.person)));
    if (own.length > 0) {
      const steps = own.map((id) => `step ${stepInWords(card, needStep(card, id))}`);
      throw new Refusal('inspector-did-it', { name: by.name, step: named, steps });
    }
  },
  changes: (life, act) => withCard(life, act.work, (was) => ({ ...was, steps: [...was.steps, act] })),
};

export interface InspectStep extends Command {
  work: string;
  step: string;
  findings: string;
}

export function inspectStep(life: DefectLife, command: InspectStep, context: Context): CardInspected[] {
  const { work, step, findings } = command;
  const head = { kind: 'card-inspected' as const, ...headOf(command, context), defect: life.defect };
  return decided(cardInspected, life, { ...head, work, step, findings });
}
