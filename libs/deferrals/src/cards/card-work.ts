/** Looking things up in the work on a card. */
import { stepsBefore, type Card, type CardAccount, type CardStep, type StepKind, type StepOf } from '#mel';
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';
import type { CardInspected, CardStepped, StepResult } from './card-acts.js';
import type { CardWork } from './card-life.js';

/** Throws Refusal `card-not-open`. */
export function needCard({ cards, defect }: Pick<DefectLife, 'cards' | 'defect'>, work: string): CardWork {
  const found = cards.find(({ started, ended }) => started.id === work && ended === null);
  if (!found) throw new Refusal('card-not-open', { work, defect });
  return found;
}

/** Throws Refusal `step-unknown`. */
export function needStep({ id, steps }: Card, step: string): CardStep {
  const found = steps.find((one) => one.id === step);
  if (!found) throw new Refusal('step-unknown', { card: id, step });
  return found;
}

export const isStep = <Kind extends StepKind>(step: CardStep, ...kinds: Kind[]): step is StepOf<Kind> =>
  (kinds as StepKind[]).includes(step.kind);

export function accountOf({ id, accounts }: Card, step: StepOf<'out' | 'in'>): CardAccount {
  const found = accounts?.find((account) => account.id === step.account);
  if (!found) throw new Error(`Card ${id} keeps no account ${step.account}; its loader should have said so.`);
  return found;
}

/** The acts on one step, oldest first. */
export const actsOn = ({ steps }: CardWork, step: string): readonly (CardStepped | CardInspected)[] =>
  steps.filter((act) => act.step === step);

/** The act that did the step; undefined while it is not done. */
export function doneBy(work: CardWork, step: CardStep): CardStepped | CardInspected | undefined {
  return actsOn(work, step.id).findLast(
    (act) => act.kind === 'card-inspected' || act.result.kind === FINISHES[step.kind],
  );
}

/** What finishes a step of each kind. An inspection is an act of its own. */
const FINISHES: Record<StepKind, CardStepped['result']['kind'] | null> = {
  do: 'done',
  verify: 'done',
  measure: 'measured',
  renew: 'renewed',
  wait: 'waited',
  out: 'out',
  in: 'in',
  inspect: null,
  run: 'looked',
};

/** Ends what was begun with its second person and its equipment. */
export const onlyEnds = ({ kind }: StepResult): boolean => kind === 'waited' || kind === 'ran' || kind === 'looked';

/** A step in words for a list: "seal: Renew both seals" */
export function stepInWords({ id, text }: CardStep): string {
  const said = text.length > 90 ? `${text.slice(0, 90).trimEnd()}...` : text.replace(/\.$/, '');
  return `${id}: ${said}`;
}

/** Steps that stand in the way of this one. */
export function stepsMissingBefore(work: CardWork, step: CardStep): CardStep[] {
  const { card } = work.started;
  const before = stepsBefore(card, step);
  return card.steps.filter((one) => before.includes(one.id) && !doneBy(work, one));
}

/** The life with one card's work made another. */
export function withCard(
  { cards }: Pick<DefectLife, 'cards'>,
  work: string,
  change: (was: CardWork) => CardWork,
): Pick<DefectLife, 'cards'> {
  return { cards: cards.map((one) => (one.started.id === work ? change(one) : one)) };
}
