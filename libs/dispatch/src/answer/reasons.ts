/** The answer in plain words: what decides it first, then what else is open. */
import type { JudgedItem } from '../conditions/judge-item.js';
import type { JudgedGate } from '../gates.js';
import type { Found } from '../search.js';
import type { NowAfter, VerdictCode } from '../verdict.js';
import { conditionSaid, itemName, sentence } from './words.js';

const STOPPED = {
  budget: 'The search for rows was given up at its budget of steps, so a better answer may exist.',
  readings:
    'The open defects can be read in too many ways (which unit failed, which configuration) to judge them all, so the search was given up at its budget.',
};

/** A kind of state that a condition can be in, and how it is said. */
interface State {
  is: (pair: NowAfter) => boolean;
  says: string;
}
const REFUSED: State = { is: ({ after }) => after === 'F', says: 'is refused' };
const OPEN: State = {
  is: ({ now, after }) => after === 'U' || (now === 'U' && after === 'T'),
  says: 'is not settled',
};
const WAITING: State = { is: ({ now, after }) => now === 'F' && after === 'T', says: 'waits for work' };

export function reasonsOf(verdict: VerdictCode, found: Found, gates: readonly JudgedGate[]): string[] {
  const items = found.best?.groups.flatMap((group) => group.items) ?? [];
  const all = (state: State): string[] => [
    ...gates.filter(({ answer }) => state.is(answer)).map(({ answer }) => sentence(answer.because)),
    ...items.flatMap((one) => saidOf(one, state)),
  ];
  const stopped = found.stopped === null ? [] : [STOPPED[found.stopped]];
  switch (verdict) {
    case 'nothing-open':
      return ['No defect is open, and nothing else keeps the aircraft on the ground.'];
    case 'may-fly':
      return [...items.flatMap(underSaid), ...items.map(holds), ...stopped];
    case 'after-work':
      return [...items.flatMap(underSaid), ...all(WAITING), ...all(OPEN), ...stopped];
    case 'not-settled':
      return [...stopped, ...all(OPEN), ...all(WAITING), ...items.flatMap(underSaid), ...all(REFUSED)];
    case 'may-not-fly':
      return [...all(REFUSED), ...stopped, ...all(OPEN), ...all(WAITING)];
  }
}

function saidOf(one: JudgedItem, { is, says }: State): string[] {
  const perhaps = one.item.perhaps ? ', if it is this one,' : '';
  return one.answer.conditions
    .filter(is)
    .map((condition) => sentence(`${itemName(one)}${perhaps} ${says}: ${conditionSaid(condition)}`));
}

function underSaid(one: JudgedItem): string[] {
  return one.answer.conditions
    .filter(({ onlyUnder }) => onlyUnder !== undefined)
    .map(({ because }) => sentence(`${itemName(one)} may fly ${because}`));
}

function holds(one: JudgedItem): string {
  return sentence(`${itemName(one)}: every condition holds, and all its work is done and signed`);
}
