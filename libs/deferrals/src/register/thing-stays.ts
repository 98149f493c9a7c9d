/**
 * A correction of a line of the register that was asked for is not made: a second person looked and found the first words
 * right, or whoever asked takes it back. Signed, with its reason; both stay readable. 145.A.48; AMC M.A.305(e); common
 * practice, no source for taking it back.
 */
import type { Context } from '../context.js';
import type { Privilege } from '../people.js';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';
import type { ThingCorrectionAsked, ThingStaysAsWritten } from './acts.js';
import type { RegisterLife } from './register-life.js';
import { registered, registerHead, type RegisterCommand, type RegisterRule } from './register-rule.js';

export const thingStaysAsWritten: RegisterRule<'thing-stays-as-written'> = {
  kind: 'thing-stays-as-written',
  privilege: (life, { asked, by }) => privilegeToLeaveThing(life, asked, by.person),
  admit(life, { asked, reason }) {
    thingWaiting(life, asked);
    needText('the reason why it stays as written', reason);
  },
  changes: ({ asked }, act) => ({ asked: asked.filter(({ id }) => id !== act.asked) }),
};

/** Whoever asked takes it back as they asked; everybody else looks, and so may inspect. Throws `correction-not-asked`. */
export function privilegeToLeaveThing(life: RegisterLife, asked: string, person: string): Privilege {
  return thingWaiting(life, asked).by.person === person ? 'write-up' : 'inspect';
}

function thingWaiting({ asked: all }: RegisterLife, asked: string): ThingCorrectionAsked {
  const one = all.find(({ id }) => id === asked);
  if (one === undefined) throw new Refusal('correction-not-asked', { asked });
  return one;
}

export interface LeaveThing extends RegisterCommand {
  /** Id of the act that asked. */
  asked: string;
  reason: string;
}

export function leaveThingAsWritten(
  life: RegisterLife,
  command: LeaveThing,
  context: Context,
): ThingStaysAsWritten[] {
  const { asked, reason } = command;
  const head = registerHead(command, context);
  return registered(thingStaysAsWritten, life, { kind: 'thing-stays-as-written', ...head, asked, reason });
}
