/**
 * A document may state from which instant or counter use counts (published interval text: "start per row and policy").
 * It may make an interval end sooner than row and policy do, and never later; that is our own rule, the stricter way.
 */
import type { RectificationClock } from '#intervals';
import type { StatedBy } from '../basis.js';
import { before } from '../instant.js';
import { Refusal } from '../refusal.js';

/**
 * @param own the clock as row and policy have it
 * Throws Refusal `start-of-days-stated`, `start-stated-later` or `text-missing`.
 */
export function admitStated({ start, document }: StatedBy, own: RectificationClock): void {
  if (document.trim() === '') throw new Refusal('text-missing', { what: 'the document that states the start' });
  if (own.kind === 'calendar') throw new Refusal('start-of-days-stated', { interval: own.interval });
  const known = 'at' in start ? start.at : start.readAt;
  if (before(own.startsAt, known)) {
    throw new Refusal('start-stated-later', { stated: known, counts: own.startsAt });
  }
}
