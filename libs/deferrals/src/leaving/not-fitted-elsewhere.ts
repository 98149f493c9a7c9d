/**
 * The same thing is not fitted twice. Where it is on the aircraft already under another owner it is named by the number it
 * has there, and belongs to both until one of them gives it over. 145.A.48.
 */
import type { LeftItem } from '../acts.js';
import type { Context } from '../context.js';
import { Refusal } from '../refusal.js';
import { thingInWords } from './left-items.js';
import { ownerInWords } from './owner-in-words.js';
import { isSameThing } from './same-thing.js';

/** Throws Refusal `fitted-already`. */
export function notFittedElsewhere(items: readonly LeftItem[], { elsewhere }: Pick<Context, 'elsewhere'>): void {
  for (const item of items) {
    const same = elsewhere.find((one) => isSameThing(one.item, item));
    if (same === undefined || same.item.id === item.id) continue;
    const owner = ownerInWords(same.owner);
    throw new Refusal('fitted-already', { thing: thingInWords(item), as: thingInWords(same.item), owner });
  }
}

/** What several owners need stays until the last one. Throws Refusal `left-for-another-too`. */
export function notNeededElsewhere(ids: readonly string[], { elsewhere }: Pick<Context, 'elsewhere'>): void {
  const needed = elsewhere.find(({ item, owner }) => owner !== null && ids.includes(item.id));
  if (needed === undefined) return;
  throw new Refusal('left-for-another-too', { thing: thingInWords(needed.item), owner: ownerInWords(needed.owner) });
}
