/**
 * The shape of the rule for one kind of act: who must sign it, when it is impossible, and what it changes.
 *
 * `admit` reads the history and the act and nothing else, so that a stored history is checked by the same rule as a new
 * act. What also depends on the operator's settings, the MEL or other defects is checked when the act is decided.
 */
import type { ActKind, ActOf } from './acts.js';
import { admitAny } from './admit-any.js';
import type { DefectLife } from './defect-life.js';
import type { Privilege } from './people.js';

export interface ActRule<Kind extends ActKind> {
  kind: Kind;
  /** The privilege its signer must hold; null when no signature is needed. A function: it hangs on what it points at. */
  privilege: Privilege | null | ((life: DefectLife, act: ActOf<Kind>) => Privilege);
  /** True when it may still be written after the defect is closed. */
  afterClosing?: boolean;
  /** Throws Refusal when this act is impossible after this history. */
  admit(life: DefectLife, act: ActOf<Kind>): void;
  /** What is different afterwards. */
  changes(life: DefectLife, act: ActOf<Kind>): Partial<DefectLife>;
}

/** Throws Refusal unless the act may follow this history; answers it as the list that a decision hands back. */
export function decided<Kind extends ActKind>(
  rule: ActRule<Kind>,
  life: DefectLife,
  act: ActOf<Kind>,
): ActOf<Kind>[] {
  const { privilege, afterClosing = false } = rule;
  admitAny(
    { privilege: typeof privilege === 'function' ? privilege(life, act) : privilege, afterClosing },
    life,
    act,
  );
  rule.admit(life, act);
  return [act];
}

/** The life after one more act. Throws Refusal when the act is impossible after this history. */
export function follow<Kind extends ActKind>(rule: ActRule<Kind>, life: DefectLife, act: ActOf<Kind>): DefectLife {
  decided(rule, life, act);
  return { ...life, ...rule.changes(life, act), acts: [...life.acts, act] };
}
