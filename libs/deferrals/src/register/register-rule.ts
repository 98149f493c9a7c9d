/** The shape of the rule for one kind of act on the register: who signs, when it is impossible, what it changes. */
import { before } from '../instant.js';
import { headOf, type Command, type Context } from '../context.js';
import type { Aircraft } from '../act-base.js';
import type { Actor, Privilege, Signature } from '../people.js';
import { Refusal } from '../refusal.js';
import { admitSignature } from '../signing/admit-signature.js';
import { admitTimes } from '../writing-up/admit-times.js';
import type { RegisterActKind, RegisterActOf } from './acts.js';
import type { RegisterLife } from './register-life.js';

export interface RegisterRule<Kind extends RegisterActKind> {
  kind: Kind;
  /** Null when no signature is needed. A function: it hangs on what it points at. */
  privilege: Privilege | null | ((life: RegisterLife, act: RegisterActOf<Kind>) => Privilege);
  /** Throws Refusal when this act is impossible after this history. */
  admit(life: RegisterLife, act: RegisterActOf<Kind>): void;
  changes(life: RegisterLife, act: RegisterActOf<Kind>): Partial<RegisterLife>;
}

/** What every command on the register carries. */
export interface RegisterCommand<By extends Actor | Signature = Signature> extends Command<By> {
  aircraft: Aircraft;
}

export function registerHead<By extends Actor | Signature>(command: RegisterCommand<By>, context: Context) {
  return { ...headOf(command, context), aircraft: command.aircraft };
}

/** Throws Refusal unless the act may follow this history; answers it as the list that a decision hands back. */
export function registered<Kind extends RegisterActKind>(
  rule: RegisterRule<Kind>,
  life: RegisterLife,
  act: RegisterActOf<Kind>,
): RegisterActOf<Kind>[] {
  const { id, aircraft, enteredAt, by } = act;
  const { registration } = aircraft;
  if (life.acts.some((one) => one.id === id))
    throw new Refusal('act-entered-twice', { act: id, defect: registration });
  const [first] = life.acts;
  if (first !== undefined && first.aircraft.registration !== registration) {
    throw new Refusal('act-of-another-aircraft', {
      act: id,
      other: registration,
      aircraft: first.aircraft.registration,
    });
  }
  admitTimes(act);
  const previousAt = life.acts.at(-1)?.enteredAt ?? enteredAt;
  if (before(enteredAt, previousAt)) {
    throw new Refusal('history-out-of-order', { act: id, enteredAt, previousAt });
  }
  const { privilege } = rule;
  const needed = typeof privilege === 'function' ? privilege(life, act) : privilege;
  admitSignature(by, needed, { aircraft, enteredAt, act: act.kind });
  rule.admit(life, act);
  return [act];
}

/** The life after one more act. */
export function registerAfter<Kind extends RegisterActKind>(
  rule: RegisterRule<Kind>,
  life: RegisterLife,
  act: RegisterActOf<Kind>,
): RegisterLife {
  registered(rule, life, act);
  return { ...life, ...rule.changes(life, act), acts: [...life.acts, act] };
}
