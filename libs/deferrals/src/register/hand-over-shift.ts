/**
 * A shift hands over the aircraft: what is left on it and what is open, line by line. Who gives signs the list, who takes
 * has read it and signs; when anything changed in between, the list is given anew. Common practice, no source for the two
 * signatures; 145.A.47(c) asks for the hand-over itself (from memory).
 */
import type { Context } from '../context.js';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';
import type { HandedLine, ShiftGiven, ShiftTaken } from './acts.js';
import type { RegisterLife } from './register-life.js';
import { registered, registerHead, type RegisterCommand, type RegisterRule } from './register-rule.js';

export const shiftGiven: RegisterRule<'shift-given'> = {
  kind: 'shift-given',
  privilege: 'sign-procedure',
  admit(_, { to }) {
    needText('who takes over', to);
  },
  changes: (_, act) => ({ offered: act }),
};

export const shiftTaken: RegisterRule<'shift-taken'> = {
  kind: 'shift-taken',
  privilege: 'sign-procedure',
  admit({ offered }, { given, by }) {
    if (offered === null || offered.id !== given) throw new Refusal('no-such-hand-over', { given });
    if (offered.by.person === by.person) throw new Refusal('same-person-taking', { name: by.name });
  },
  changes: ({ offered }, act) =>
    offered === null ? {} : { offered: null, lastTaken: { given: offered, taken: act } },
};

/** The aircraft as it stands: everything left on it, whoever owns it, and what is open. */
export interface ShiftList {
  left: HandedLine[];
  open: string[];
}

export interface GiveShift extends RegisterCommand {
  list: ShiftList;
  to: string;
  note?: string;
}

export function giveShift(life: RegisterLife, command: GiveShift, context: Context): ShiftGiven[] {
  const { list, to, note = '' } = command;
  const head = registerHead(command, context);
  return registered(shiftGiven, life, { kind: 'shift-given', ...head, ...list, to, note });
}

export interface TakeShift extends RegisterCommand {
  given: string;
  /** The aircraft as it stands now. */
  list: ShiftList;
  remarks?: string;
}

/** Throws Refusal `changed-since-given` when the list is no longer what was signed. */
export function takeShift(life: RegisterLife, command: TakeShift, context: Context): ShiftTaken[] {
  const { given, list, remarks = '' } = command;
  const { offered } = life;
  if (offered !== null && offered.id === given) {
    const differing = differences(offered, list);
    if (differing.length > 0) throw new Refusal('changed-since-given', { differing });
  }
  return registered(shiftTaken, life, { kind: 'shift-taken', ...registerHead(command, context), given, remarks });
}

/** What was given and is gone, or is there and was not given. */
function differences(given: ShiftList, now: ShiftList): string[] {
  const [then, there] = [linesOf(given), linesOf(now)];
  return [
    ...then.filter((line) => !there.includes(line)).map((line) => `no longer: ${line}`),
    ...there.filter((line) => !then.includes(line)).map((line) => `new: ${line}`),
  ];
}

function linesOf({ left, open }: ShiftList): string[] {
  return [...left.map(({ words, owner }) => `${words}, ${owner}`), ...open];
}
