/**
 * A correction that was asked for is not made: a second person looked and found the first words right, or whoever asked
 * takes it back. Signed, with its reason; both stay readable. 145.A.48; AMC M.A.305(e); common practice, no source for
 * taking it back.
 */
import type { CorrectionAsked, StaysAsWritten } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import type { Privilege } from '../people.js';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';
import { privilegeOfCorrection } from './admit-correction.js';
import { askedAfter } from './asked-after.js';

export const staysAsWritten: ActRule<'stays-as-written'> = {
  kind: 'stays-as-written',
  privilege: (life, { asked, by }) => privilegeToLeaveIt(life, asked, by.person),
  afterClosing: true,
  admit(life, { asked, reason }) {
    waitingBy(life, asked);
    needText('the reason why it stays as written', reason);
  },
  changes: (life, act) => ({ asked: askedAfter(life, act) }),
};

/** Whoever asked may take it back as they asked; everybody else looks, and so may inspect. Throws `correction-not-asked`. */
export function privilegeToLeaveIt(life: DefectLife, asked: string, person: string): Privilege {
  const one = waitingBy(life, asked);
  return one.by.person === person ? privilegeOfCorrection(life, one) : 'inspect';
}

export function waitingBy({ asked: all }: Pick<DefectLife, 'asked'>, asked: string): CorrectionAsked {
  const one = all.find(({ id }) => id === asked);
  if (one === undefined) throw new Refusal('correction-not-asked', { asked });
  return one;
}

export interface StayAsWritten extends Command {
  /** Id of the act that asked. */
  asked: string;
  reason: string;
}

export function stayAsWritten(life: DefectLife, command: StayAsWritten, context: Context): StaysAsWritten[] {
  const { asked, reason } = command;
  const head = headOf(command, context);
  return decided(staysAsWritten, life, { kind: 'stays-as-written', ...head, defect: life.defect, asked, reason });
}
