import { stepsBefore, type Card, type CardStep } from './card.js';

/** Every step that is done by the time this one may begin. Steps wait only for steps that stand before them. */
export function stepsLeadingTo(card: Card, step: CardStep): ReadonlySet<string> {
  const found = new Set<string>();
  const open = [...stepsBefore(card, step)];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    const known = found.has(id);
    found.add(id);
    const before = known ? undefined : card.steps.find((one) => one.id === id);
    if (before) open.push(...stepsBefore(card, before));
  }
  return found;
}
