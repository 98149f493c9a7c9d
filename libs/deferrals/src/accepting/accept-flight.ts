/**
 * The commander accepts the aircraft for one flight with what is open on it, or declines it with a reason; the dispatcher
 * acknowledges the limits likewise. It begins with what was shown, and stands only for that: another flight, another
 * aircraft, a new item, a new release or a fact that is over ask again. ORO.MLR.105; 14 CFR 121.533 (from memory).
 */
import type { Aircraft } from '../act-base.js';
import { before } from '../instant.js';
import type { Signature } from '../people.js';
import { Refusal } from '../refusal.js';
import { admitSignature } from '../signing/admit-signature.js';
import { needText } from '../writing-up/need-text.js';

export type AcceptingRole = 'commander' | 'dispatcher';

/** How an open item was shown: its basis by the act that put it in force, and in words. */
export interface ItemShown {
  defect: string;
  /** Id of the act that put the basis in force; null for an item without one. */
  basis: string | null;
  words: string;
}

/** What was shown to the one who accepts; equal things give equal acceptances. */
export interface Shown {
  aircraft: string;
  flight: string;
  items: ItemShown[];
  /** When anything on the aircraft was last released, ISO 8601; null when nothing ever was. */
  lastReleaseAt: string | null;
  /** The earliest end of the facts and limits that the answer rests on (exclusive); null when it names none. */
  goodUntil: string | null;
}

export interface Acceptance {
  role: AcceptingRole;
  accepted: boolean;
  /** Why it is declined; null when it is accepted. */
  reason: string | null;
  by: Signature;
  at: string;
  shown: Shown;
}

export interface AcceptFlight {
  role: AcceptingRole;
  accepted: boolean;
  reason?: string;
  by: Signature;
}

/** Throws Refusal `declined-without-reason`, `role-does-not-accept`, or one of those of a signature. */
export function acceptFlight(aircraft: Aircraft, shown: Shown, command: AcceptFlight, now: string): Acceptance {
  const { role, accepted, reason = '', by } = command;
  if (by.role !== role) throw new Refusal('role-does-not-accept', { name: by.name, role: by.role, asked: role });
  if (!accepted && reason.trim() === '') throw new Refusal('declined-without-reason', {});
  if (shown.goodUntil !== null && !before(now, shown.goodUntil)) {
    throw new Refusal('shown-is-over', { until: shown.goodUntil });
  }
  needText('the flight', shown.flight);
  admitSignature(by, null, { aircraft, enteredAt: now, act: 'acceptance of the aircraft for a flight' });
  return { role, accepted, reason: accepted ? null : reason, by, at: now, shown };
}

/** Why an acceptance no longer stands, in words; nothing when it does. `now`: the instant it is asked at. */
export function voidBecause({ shown }: Pick<Acceptance, 'shown'>, asked: Shown, now: string): string[] {
  const was = new Map(shown.items.map((item) => [item.defect, item]));
  const added = asked.items.filter(({ defect }) => !was.has(defect));
  const changed = asked.items.filter(({ defect, basis }) => was.has(defect) && was.get(defect)?.basis !== basis);
  const over = shown.goodUntil !== null && !before(now, shown.goodUntil);
  return [
    ...(asked.aircraft === shown.aircraft ? [] : ['it was for another aircraft']),
    ...(asked.flight === shown.flight ? [] : ['it was for another flight']),
    ...added.map(({ words }) => `new since then: ${words}`),
    ...changed.map(({ words }) => `stands on another basis since then: ${words}`),
    ...(asked.lastReleaseAt === shown.lastReleaseAt ? [] : ['work was released since then']),
    ...(over ? [`what it rested on ended at ${shown.goodUntil}`] : []),
  ];
}
