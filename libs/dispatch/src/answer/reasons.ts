/** The answer in plain words: what decides it first, then what else is open. */
import type { JudgedChoice } from '../choice.js';
import type { JudgedItem } from '../conditions/judge-item.js';
import type { JudgedGate } from '../gates.js';
import type { Found } from '../search.js';
import type { NowAfter, VerdictCode } from '../verdict.js';
import { conditionSaid, itemName, withoutStop } from './words.js';

const STOPPED = {
  budget: 'The search for the best rows was given up at its budget, so a better answer may exist.',
  readings:
    'The open defects can be read in too many ways (which unit failed, which configuration) to judge them all: budget.',
};

export function reasonsOf(verdict: VerdictCode, found: Found, gates: readonly JudgedGate[]): string[] {
  const refusing = said(found.best, gates, isRefused, 'does not hold');
  const open = said(found.best, gates, isOpen, 'not settled');
  const waiting = said(found.best, gates, isWaiting, 'after work');
  const stopped = found.stopped === null ? [] : [STOPPED[found.stopped]];
  switch (verdict) {
    case 'nothing-open':
      return ['No defect is open, and nothing else keeps the aircraft on the ground.'];
    case 'may-fly':
      return [...allHold(found.best), ...stopped];
    case 'after-work':
      return [...waiting, ...open, ...stopped];
    case 'not-settled':
      return [...stopped, ...open, ...waiting, ...refusing];
    case 'may-not-fly':
      return [...refusing, ...stopped, ...open, ...waiting];
  }
}

const isRefused = ({ after }: NowAfter): boolean => after === 'F';
const isOpen = ({ now, after }: NowAfter): boolean => after === 'U' || (now === 'U' && after === 'T');
const isWaiting = ({ now, after }: NowAfter): boolean => now === 'F' && after === 'T';

function said(
  choice: JudgedChoice | null,
  gates: readonly JudgedGate[],
  wanted: (pair: NowAfter) => boolean,
  label: string,
): string[] {
  const ofGates = gates
    .filter(({ answer }) => wanted(answer))
    .map(({ answer }) => sentence(`${answer.text}: ${label} - ${answer.because}`));
  const items = choice?.groups.flatMap((group) => group.items) ?? [];
  return [...ofGates, ...items.flatMap((one) => saidOfItem(one, wanted, label))];
}

function saidOfItem(one: JudgedItem, wanted: (pair: NowAfter) => boolean, label: string): string[] {
  const perhaps = one.item.perhaps ? ' (if it is this one)' : '';
  return one.answer.conditions
    .filter(wanted)
    .map((condition) => sentence(`${itemName(one)}${perhaps}: ${label}: ${conditionSaid(condition)}`));
}

function allHold(choice: JudgedChoice | null): string[] {
  return (choice?.groups ?? [])
    .flatMap(({ items }) => items)
    .map((one) => sentence(`${itemName(one)}: every condition holds and all its work is done`));
}

function sentence(text: string): string {
  const whole = withoutStop(text);
  return `${whole.charAt(0).toUpperCase()}${whole.slice(1)}.`;
}
