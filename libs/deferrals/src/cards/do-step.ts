/**
 * A step of a card is done, begun or ended: in its turn, by somebody who may, within the limits of the card, not cut
 * short, with everything counted out and in. 145.A.45(e); 145.A.48(a).
 */
import type { CardStep } from '#mel';
import type { LeftItem } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { leave, undo } from '../leaving/left-items.js';
import { notFittedElsewhere, notNeededElsewhere } from '../leaving/not-fitted-elsewhere.js';
import type { Actor, Authorisation, Signature } from '../people.js';
import { Refusal } from '../refusal.js';
import { dayIn } from '../repeating/good-for.js';
import { admitAuthorisation } from '../signing/admit-signature.js';
import { needText } from '../writing-up/need-text.js';
import { admitStep } from './admit-step.js';
import type { CardStepped, StepResult } from './card-acts.js';
import type { CardWork } from './card-life.js';
import { accountOf, actsOn, ASKED, isStep, needCard, needStep, stepInWords, withCard } from './card-work.js';
import { admitIn, admitOut, outOf } from './counted.js';
import { admitEquipment, type EquipmentStated } from './equipment.js';
import { admitBegun, admitLasted } from './lasting.js';
import { admitRenewed } from './renewed.js';
import { admitMeasured, admitReadings } from './measured.js';
import { admitSecondPerson } from './second-person.js';

export const cardStepped: ActRule<'card-stepped'> = {
  kind: 'card-stepped',
  privilege: null,
  admit(life, act) {
    const work = needCard(life, act.work);
    const step = needStep(work.started.card, act.step);
    admitAuthorisation(act.by, act.on, 'sign-procedure', {
      aircraft: life.aircraft,
      enteredAt: act.enteredAt,
      act: act.kind,
      job: { defect: life.defect, acts: life.acts },
    });
    admitStep(work, step, act.by, act.on);
    admitSecondPerson(life, work, step, act);
    admitEquipment(life, work, step, act);
    admitResult(life, work, step, act);
  },
  changes: (life, act) => ({
    ...withCard(life, act.work, (was) => ({ ...was, steps: [...was.steps, act] })),
    // Something was touched, in the register or not: latches are only counted.
    ...undo(life, []),
    ...(act.result.kind === 'out' && act.result.item ? leave(life, [act.result.item]) : {}),
    ...(act.result.kind === 'in' && act.result.item ? undo(life, [act.result.item]) : {}),
  }),
};

function admitResult(life: DefectLife, work: CardWork, step: CardStep, act: CardStepped): void {
  const { result } = act;
  const named = stepInWords(work.started.card, step);
  if (result.kind === 'done' && isStep(step, 'do', 'verify')) return;
  if (result.kind === 'measured' && isStep(step, 'measure')) return admitMeasured(named, step, result);
  if (result.kind === 'renewed' && isStep(step, 'renew')) return admitRenewed(named, step, result);
  if (result.kind === 'begun' && isStep(step, 'wait', 'run')) return admitBegun(named, step, result);
  if (result.kind === 'waited' && isStep(step, 'wait')) return admitLasted(work, step, act);
  if (result.kind === 'out' && isStep(step, 'out')) return admitOut(life, work, step, result);
  if (result.kind === 'in' && isStep(step, 'in')) return admitIn(life, work, step, result);
  if (result.kind === 'ran' && isStep(step, 'run')) {
    admitLasted(work, step, act);
    return admitReadings(named, step, result.readings);
  }
  if (result.kind === 'looked' && isStep(step, 'run') && endedRun(work, step)) {
    return needText('what the look afterwards found', result.findings);
  }
  throw new Refusal('step-done-otherwise', { step: named, asked: ASKED[step.kind], given: result.kind });
}

/** The look comes after the run: after its last beginning, its readings were taken. */
function endedRun(work: CardWork, { id }: CardStep): boolean {
  const last = actsOn(work, id).at(-1);
  return last?.kind === 'card-stepped' && last.result.kind === 'ran';
}

/** What a step is told: the rule adds how it stands in the register. */
export type StepAsked =
  | Exclude<StepResult, { kind: 'out' | 'in' | 'begun' }>
  | { kind: 'begun'; minutes?: number }
  | { kind: 'out'; count: number; number?: string }
  | { kind: 'in'; count: number; number?: string };

export interface DoStep extends Command<Actor> {
  work: string;
  step: string;
  on: Authorisation;
  result: StepAsked;
  second?: Actor | Signature;
  used?: EquipmentStated[];
}

export function doStep(life: DefectLife, command: DoStep, context: Context): CardStepped[] {
  const { work, step, on, second, used = [] } = command;
  const result = resultOf(life, command);
  if (result.kind === 'out' && result.item !== null) notFittedElsewhere([result.item], context);
  if (result.kind === 'in' && result.item !== null) notNeededElsewhere([result.item], context);
  const head = { kind: 'card-stepped' as const, ...headOf(command, context), defect: life.defect };
  const usedOn = dayIn(context.now, context.settings.base);
  const stated = used.map(({ what, number, calibratedUntil = null }) => ({ what, number, calibratedUntil, usedOn }));
  const more = { ...(second && { second }), ...(stated.length > 0 && { used: stated }) };
  return decided(cardStepped, life, { ...head, work, step, on, result, ...more });
}

function resultOf(life: DefectLife, { id, work: workId, step: stepId, result }: DoStep): StepResult {
  const work = needCard(life, workId);
  const step = needStep(work.started.card, stepId);
  if (result.kind === 'begun') return { kind: 'begun', minutes: result.minutes ?? minutesOf(step) };
  if (result.kind === 'out') {
    const item = isStep(step, 'out') ? registered(id, accountOf(work.started.card, step), result.number) : null;
    return { kind: 'out', count: result.count, item };
  }
  if (result.kind === 'in') {
    const standing = isStep(step, 'in') ? outOf(life, work, accountOf(work.started.card, step)) : [];
    const number = result.number ?? null;
    const item = (standing.find(({ tag }) => tag === number) ?? standing[0])?.id ?? null;
    return { kind: 'in', count: result.count, number, item };
  }
  return result;
}

/** Minutes that nobody entered are the card's; where the aircraft shows them they cannot be left out. */
const minutesOf = (step: CardStep): number =>
  isStep(step, 'wait', 'run') && 'minutes' in step.lasts ? step.lasts.minutes : Number.NaN;

function registered(
  id: string,
  { kind, where, what, undo: how, numbered }: ReturnType<typeof accountOf>,
  number: string | undefined,
): LeftItem | null {
  if (kind === undefined) return null;
  return { id, kind, where, tag: number ?? (numbered === true ? '' : what), undo: how ?? '' };
}
