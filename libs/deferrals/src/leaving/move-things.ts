/**
 * A thing left on the aircraft changes its owner: from one open defect to another, to a modification, a directive or a
 * permit, or back; or an owner is found for one that had none. It is never without one in between: who gives and who takes
 * are written together, or neither is. 145.A.48.
 */
import type { Act, DocumentOwner, LeftItem, Owner } from '../acts.js';
import type { Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import type { Signature } from '../people.js';
import { Refusal } from '../refusal.js';
import type { RegisterAct } from '../register/acts.js';
import { adopt, handOn } from '../register/change-owner.js';
import { itemsOf, type RegisterLife } from '../register/register-life.js';
import { giveOver } from './give-over.js';
import { admitUndone } from './left-items.js';
import { takeOver } from './take-over.js';

/** Who has it, or who gets it. The register stands for every document, and for what nobody owns. */
export type Holder =
  { kind: 'defect'; life: DefectLife } | { kind: 'register'; life: RegisterLife; owner: DocumentOwner | null };

export interface MoveThings {
  /** Identities for the two acts. */
  ids: { gives: string; takes: string };
  by: Signature;
  items: string[];
  from: Holder;
  to: Holder;
  /** True when the giver keeps it too: the work of both needs it there. */
  together: boolean;
  reason: string;
}

export interface Moved {
  /** Acts on the defect that gives, on the one that takes, and on the register of the aircraft. */
  gives: Act[];
  takes: Act[];
  register: RegisterAct[];
}

export function moveThings(command: MoveThings, context: Context): Moved {
  const { from, to, items, together, by, reason, ids } = command;
  const things = thingsOf(from, items);
  if (together && (from.kind === 'register' || to.kind === 'register'))
    throw new Refusal('together-only-defects', {});
  if (to.kind === 'register') return toRegister(command, to, things, context);
  const taken = things.filter(({ id }) => !to.life.left.some((one) => one.id === id));
  const said = { by, reason };
  const takes =
    taken.length === 0
      ? []
      : takeOver(to.life, { ...said, id: ids.takes, items: taken, from: ownerOf(from), together }, context);
  if (together) return { gives: [], takes, register: [] };
  const owner = ownerOf(to) ?? { kind: 'defect' as const, defect: to.life.defect };
  if (from.kind === 'defect') {
    return { gives: giveOver(from.life, { ...said, id: ids.gives, items, to: owner }, context), takes, register: [] };
  }
  const { aircraft } = to.life;
  const register = handOn(from.life, { ...said, id: ids.gives, aircraft, items, to: owner }, context);
  return { gives: [], takes, register };
}

function toRegister(
  { from, items, by, reason, ids }: MoveThings,
  { life, owner }: Extract<Holder, { kind: 'register' }>,
  things: LeftItem[],
  context: Context,
): Moved {
  if (owner === null) throw new Refusal('owner-not-named', {});
  const aircraft = from.kind === 'defect' ? from.life.aircraft : life.acts[0]?.aircraft;
  if (aircraft === undefined) throw new Refusal('left-item-unknown', { defect: 'register', left: 'nothing' });
  const said = { by, reason };
  const register = adopt(
    life,
    { ...said, id: ids.takes, aircraft, items: things, owner, from: ownerOf(from) },
    context,
  );
  if (from.kind === 'register') return { gives: [], takes: [], register };
  return { gives: giveOver(from.life, { ...said, id: ids.gives, items, to: owner }, context), takes: [], register };
}

function thingsOf(from: Holder, ids: readonly string[]): LeftItem[] {
  const left = from.kind === 'defect' ? from.life.left : itemsOf(from.life);
  admitUndone({ left, defect: from.kind === 'defect' ? from.life.defect : 'register' }, ids);
  return left.filter(({ id }) => ids.includes(id));
}

function ownerOf(holder: Holder): Owner | null {
  return holder.kind === 'defect' ? { kind: 'defect', defect: holder.life.defect } : holder.owner;
}
