/** Counting out what is left on the aircraft, and counting it in again. 145.A.48; 145.A.50(a). */
import type { LeftItem } from '../acts.js';
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';
import { isSameThing } from './same-thing.js';

/** Throws Refusal `text-missing`, `left-item-known` or `fitted-already`. */
export function admitLeft({ left, defect }: Pick<DefectLife, 'left' | 'defect'>, items: readonly LeftItem[]): void {
  const there = [...left];
  for (const item of items) {
    const { id, where, tag, undo } = item;
    needText('the number of what is left on the aircraft', id);
    needText('where it is left', where);
    needText('its tag, collar or label', tag);
    needText('how it is undone', undo);
    const known = there.find((one) => one.id === id);
    if (known) throw new Refusal('left-item-known', { thing: thingInWords(known) });
    const same = there.find((one) => isSameThing(one, item));
    if (same)
      throw new Refusal('fitted-already', { thing: thingInWords(item), as: thingInWords(same), owner: defect });
    there.push(item);
  }
}

/** Throws Refusal `left-item-unknown`. */
export function admitUndone({ left, defect }: Pick<DefectLife, 'left' | 'defect'>, ids: readonly string[]): void {
  for (const item of ids) {
    if (left.some(({ id }) => id === item)) continue;
    throw new Refusal('left-item-unknown', { defect, left: thingsInWords(left) });
  }
}

/** A new alteration takes back the word that all is back to normal. */
export function leave(life: DefectLife, items: readonly LeftItem[]): Pick<DefectLife, 'left' | 'altered' | 'work'> {
  if (items.length === 0) return { left: life.left, altered: life.altered, work: life.work };
  return { left: [...life.left, ...items], altered: true, work: lookedAtNoMore(life.work) };
}

function lookedAtNoMore(work: DefectLife['work']): DefectLife['work'] {
  return work === null ? null : { ...work, restored: null, verified: null };
}

/** Something was touched, so the last look over the aircraft no longer counts. */
export function undo({ left, work }: DefectLife, ids: readonly string[]): Pick<DefectLife, 'left' | 'work'> {
  return {
    left: left.filter(({ id }) => !ids.includes(id)),
    work: work === null ? null : { ...work, verified: null },
  };
}

/** Throws Refusal `still-left-on-the-aircraft`, naming each thing. */
export function nothingLeft({ defect, left }: DefectLife): void {
  if (left.length > 0) throw new Refusal('still-left-on-the-aircraft', { defect, things: thingsInWords(left) });
}

export function thingInWords({ kind, where, tag }: Record<'kind' | 'where' | 'tag', string>): string {
  return `${kind.replaceAll('-', ' ')} at ${where} (${tag})`;
}

export function thingsInWords(items: readonly LeftItem[]): string[] {
  return items.length === 0 ? ['nothing'] : items.map(thingInWords);
}
