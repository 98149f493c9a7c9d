/** Looking things up in the work on a card. */
import { stepsBefore, type Card, type CardAccount, type CardStep, type StepKind, type StepOf } from '#mel';
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';
import type { CardInspected, CardStepped, StepResult } from './card-acts.js';
import type { CardWork } from './card-life.js';

/** Throws Refusal `card-not-open`. */
export function needCard({ cards, defect }: Pick<DefectLife, 'cards' | 'defect'>, work: string): CardWork {
  const found = cards.find(({ started }) => started.id === work);
  if (found?.ended === null) return found;
  throw new Refusal('card-not-open', { work: found?.started.card.title ?? work, defect });
}

/** Throws Refusal `step-unknown`. */
export function needStep({ title, steps }: Card, step: string): CardStep {
  const found = steps.find((one) => one.id === step);
  if (!found) throw new Refusal('step-unknown', { card: title, step });
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

const MOST_CHARACTERS = 90;

/** A step as somebody finds it on the card, by its number and its words, a long text cut at a word: `9 "Renew both seals"`. */
export function stepInWords(card: Pick<Card, 'steps'>, step: CardStep): string {
  const said = step.text.replace(/\.$/, '');
  if (said.length <= MOST_CHARACTERS) return stepInFull(card, { ...step, text: said });
  const cut = said.slice(0, MOST_CHARACTERS + 1).replace(/\s+\S*$/, '');
  return stepInFull(card, { ...step, text: `${cut.slice(0, MOST_CHARACTERS)}...` });
}

/** The same with its whole text. Marks within it are made single, so that it is seen where the step's words end. */
export function stepInFull({ steps }: Pick<Card, 'steps'>, { id, text }: CardStep): string {
  return `${steps.findIndex((one) => one.id === id) + 1} "${text.replaceAll('"', "'")}"`;
}

/** What a step of each kind asks for. */
export const ASKED: Record<StepKind, string> = {
  do: 'do it and say so',
  verify: 'look and say so',
  measure: 'read a value and enter it',
  renew: 'renew the part and enter its number',
  wait: 'begin the wait, and end it when its time is over',
  out: 'count out',
  in: 'count in',
  inspect: 'have it inspected by a second person, who signs',
  run: 'begin the run, end it with its readings, and look afterwards',
};

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
