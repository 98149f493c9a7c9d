/** Counting out what a card alters, and counting it in again: how many, and by their numbers. 145.A.48(a)(1). */
import { PAIRS, type CardAccount, type StepOf } from '#mel';
import type { LeftItem } from '../acts.js';
import type { DefectLife } from '../defect-life.js';
import { admitLeft } from '../leaving/left-items.js';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';
import type { StepResult } from './card-acts.js';
import type { CardWork } from './card-life.js';
import { accountOf, actsOn, stepInWords } from './card-work.js';

/** Throws Refusal. What has a kind stands in the register from this moment on. */
export function admitOut(
  life: DefectLife,
  work: CardWork,
  step: StepOf<'out'>,
  { count, item }: StepResult & { kind: 'out' },
): void {
  const { card } = work.started;
  const account = accountOf(card, step);
  const named = stepInWords(card, step);
  admitCount(named, account, count, 'out');
  if ((item === null) !== (account.kind === undefined)) throw strange(named, 'out', account);
  if (item === null) return;
  if (item.kind !== account.kind || item.where !== account.where) throw strange(named, 'out', account);
  if (account.numbered === true) needText(`the number of ${account.what}`, item.tag);
  admitLeft(life, [item]);
}

/** Throws Refusal `count-differs`, `number-differs` or `nothing-of-it-left`. */
export function admitIn(
  life: DefectLife,
  work: CardWork,
  step: StepOf<'in'>,
  { count, item, number }: StepResult & { kind: 'in' },
): void {
  const { card } = work.started;
  const account = accountOf(card, step);
  const named = stepInWords(card, step);
  const { what, where, kind, numbered } = account;
  admitCount(named, account, count, 'in');
  if (kind === undefined) {
    if (item !== null) throw strange(named, 'in', account);
    return;
  }
  const standing = outOf(life, work, account);
  if (standing.length === 0) {
    throw new Refusal('nothing-of-it-left', { step: named, what: `${what} at ${where}`, defect: life.defect });
  }
  const meant = standing.find(({ id }) => id === item);
  if (meant && (numbered !== true || meant.tag === number)) return;
  const still = standing.map((one) => `${what} at ${one.where} (${one.tag})`);
  throw new Refusal('number-differs', { step: named, given: number ?? 'none', what, still });
}

/** What stands in the register of this account: what this card counted out, or what an earlier one left. */
export function outOf({ left }: Pick<DefectLife, 'left'>, work: CardWork, account: CardAccount): LeftItem[] {
  if (account.over === 'found')
    return left.filter(({ kind, where }) => kind === account.kind && where === account.where);
  const own = work.started.card.steps.filter((step) => step.kind === 'out' && step.account === account.id);
  const ids = own.flatMap(({ id }) =>
    actsOn(work, id).flatMap((act) =>
      act.kind === 'card-stepped' && act.result.kind === 'out' && act.result.item ? [act.result.item.id] : [],
    ),
  );
  return left.filter(({ id }) => ids.includes(id));
}

function admitCount(
  step: string,
  { what, where, pair, count = 1 }: CardAccount,
  given: number,
  way: 'out' | 'in',
): void {
  if (given === count) return;
  const missing =
    given < count ? `${count - given} of ${what} at ${where}` : 'the count on the card; the card does not fit';
  throw new Refusal('count-differs', { step, given, asked: count, what, word: PAIRS[pair][way], missing });
}

function strange(step: string, way: 'out' | 'in', { what, pair }: CardAccount): Refusal {
  return new Refusal('step-done-otherwise', { step, asked: `count ${way} ${what}`, given: PAIRS[pair][way] });
}
