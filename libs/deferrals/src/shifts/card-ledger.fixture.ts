/**
 * A naive ledger of the work on one card: who did which step, what is out on the aircraft, when each wait was begun. It
 * says beforehand whether the next thing may be done; it shares the card with the lib, and no code.
 */
import type { Card, CardStep } from '#mel';
import { MINUTES } from './card-plan.fixture.js';
import { mayStand, type Pen } from './crew.fixture.js';

/**
 * What is wrong with how a step is done; `again`: a wait or a run is begun once more; `unsigned`: a second person is named
 * and does not sign; `unstated`: nobody says which gauge; `expired`: its calibration ended the day before.
 */
export const SLIPS = [
  ...(['count', 'number', 'value', 'kind', 'again'] as const),
  ...(['alone', 'oneself', 'unsigned', 'unstated', 'expired'] as const),
];
export type Slip = (typeof SLIPS)[number] | 'none';

/** What somebody did in a step, and who was named as being there. */
interface Hand {
  step: string;
  person: string;
  second: string | null;
}

/** One card that was started. */
export interface Ledger {
  defect: number;
  work: string;
  card: Card;
  done: Set<string>;
  hands: Hand[];
  /** When each wait or run was begun last, in minutes. */
  begun: Map<string, number>;
  ran: Set<string>;
  /** What it counted out and not yet in: account, and its number. */
  out: Map<string, string>;
  state: 'open' | 'signed' | 'stopped';
  signer: string | null;
  /** Released since it ended. */
  released: boolean;
}

export const ledgerOf = (defect: number, work: string, card: Card): Ledger => ({
  defect,
  work,
  card,
  state: 'open',
  signer: null,
  released: false,
  done: new Set(),
  hands: [],
  begun: new Map(),
  ran: new Set(),
  out: new Map(),
});

export interface Try {
  pen: Pen;
  /** How the second person signs. */
  second: Pen;
  slip: Slip;
  number: string;
  now: number;
  /** What is out anywhere on the aircraft, by `thingOf`. */
  onAircraft: ReadonlySet<string>;
}

/** A tool is one by its number, everything else by its place. */
export const thingOf = (account: string, number: string): string => (account === 'tool' ? `tool ${number}` : account);

/** Latches are only counted. */
export const isRegistered = (account: string): boolean => account !== 'latches';

export const needsTwo = ({ needs = [] }: CardStep): boolean => needs.some(({ kind }) => kind === 'second-person');

/** Who is named as the second person. */
export function secondIn(step: CardStep, { slip, pen, second }: Try): string | null {
  if (!needsTwo(step) || slip === 'alone') return null;
  return slip === 'oneself' ? pen.person : second.person;
}

export type Part = 'begin' | 'end' | 'look' | 'do';

/** What comes next of the step: a wait has two parts, a run three. */
export function partOf({ begun, ran }: Ledger, { id, kind }: CardStep, slip: Slip): Part {
  if (kind !== 'wait' && kind !== 'run') return 'do';
  if (!begun.has(id) || slip === 'again') return 'begin';
  return ran.has(id) ? 'look' : 'end';
}

export function isInTurn({ card, done }: Ledger, step: CardStep): boolean {
  const at = card.steps.indexOf(step);
  const before = step.after ?? (at === 0 ? [] : [card.steps[at - 1]?.id ?? '']);
  return !done.has(step.id) && before.every((id) => done.has(id));
}

/** Somebody who acts without signing: when and what was signed is no matter. */
const mayAct = (pen: Pen, now: number): boolean =>
  mayStand({ ...pen, early: 0, statement: 'none' }, now, 'sign-procedure');

export function mayStep(ledger: Ledger, step: CardStep, asked: Try): boolean {
  const { slip, now, pen } = asked;
  const { licence } = step;
  const second = secondIn(step, asked);
  const part = partOf(ledger, step, slip);
  if (ledger.state !== 'open' || step.kind === 'inspect' || slip === 'kind') return false;
  if (!mayAct(pen, now) || !isInTurn(ledger, step)) return false;
  if (licence !== undefined && !pen.categories.some((one) => licence.includes(one))) return false;
  if (second === pen.person) return false;
  const isFirst = part === 'begin' || part === 'do';
  if (needsTwo(step) && second === null && isFirst) return false;
  if (second !== null && !maySecond(step, asked)) return false;
  if (usesGauge(step) && isFirst && (slip === 'unstated' || slip === 'expired')) return false;
  if (part === 'end' && now < (ledger.begun.get(step.id) ?? 0) + MINUTES) return false;
  return isRight(ledger, step, asked);
}

export const usesGauge = ({ needs = [] }: CardStep): boolean => needs.some(({ kind }) => kind === 'equipment');

/** The second person signs, on a paper that is good for this type, with the category where the card asks for one. */
function maySecond({ needs = [] }: CardStep, { slip, second, now }: Try): boolean {
  const asked = needs.some(({ licence }) => licence !== undefined);
  return slip !== 'unsigned' && mayStand(second, now, null) && (!asked || second.categories.includes('B1'));
}

/** What is entered fits the card. */
function isRight({ out }: Ledger, step: CardStep, { slip, number, onAircraft }: Try): boolean {
  switch (step.kind) {
    case 'measure':
    case 'run':
      return slip !== 'value';
    case 'renew':
      return slip !== 'count';
    case 'out':
      if (slip === 'count' || !isRegistered(step.account)) return slip !== 'count';
      return slip !== 'number' && !onAircraft.has(thingOf(step.account, number));
    case 'in':
      if (slip === 'count' || !isRegistered(step.account)) return slip !== 'count';
      return slip !== 'number' && out.get(step.account) === number;
    default:
      return true;
  }
}

/** Written down once the lib admitted it. */
export function enter(ledger: Ledger, step: CardStep, asked: Try): void {
  const { pen, number, now, slip } = asked;
  const part = partOf(ledger, step, slip);
  ledger.hands.push({ step: step.id, person: pen.person, second: secondIn(step, asked) });
  if (part === 'begin') {
    ledger.begun.set(step.id, now);
    ledger.ran.delete(step.id);
  } else if (part === 'end' && step.kind === 'run') ledger.ran.add(step.id);
  else ledger.done.add(step.id);
  if (step.kind === 'out') ledger.out.set(step.account, number);
  if (step.kind === 'in') ledger.out.delete(step.account);
}

/** May the second look be signed? */
export function mayInspect(ledger: Ledger, { pen, now }: Try): boolean {
  const look = ledger.card.steps.find(({ kind }) => kind === 'inspect');
  if (look?.kind !== 'inspect' || ledger.state !== 'open') return false;
  const own = ledger.hands.some(
    ({ step, person, second }) => look.of.includes(step) && [person, second].includes(pen.person),
  );
  return mayStand(pen, now, 'inspect') && isInTurn(ledger, look) && !own;
}

const stays = ({ accounts = [] }: Card, account: string): boolean =>
  accounts.find(({ id }) => id === account)?.over === 'stays';

/** Every step done, nothing out that does not stay; and a category A licence for own work alone. */
export function maySign({ state, card, done, out, hands }: Ledger, { pen, now }: Try): boolean {
  return (
    state === 'open' &&
    mayStand(pen, now, 'sign-procedure') &&
    card.steps.every(({ id }) => done.has(id)) &&
    [...out.keys()].every((account) => stays(card, account)) &&
    (pen.categories.some((one) => one !== 'A') || hands.every(({ person }) => person === pen.person))
  );
}

/** Nothing of it is out, not even what was to stay. */
export const mayStop = ({ state, out }: Ledger, { pen, now }: Try): boolean =>
  state === 'open' && mayStand(pen, now, 'sign-procedure') && out.size === 0;
