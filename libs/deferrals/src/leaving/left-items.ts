/** Counting out what is left on the aircraft under a defect, and counting it in again. 145.A.48; 145.A.50(a). */
import type { LeftItem } from '../acts.js';
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';

/** Throws Refusal `text-missing` or `left-item-known`. */
export function admitLeft({ left }: DefectLife, items: readonly LeftItem[]): void {
  const known = new Set(left.map(({ id }) => id));
  for (const { id, where, tag, undo } of items) {
    needText('the number of what is left on the aircraft', id);
    needText('where it is left', where);
    needText('its tag, collar or label', tag);
    needText('how it is undone', undo);
    if (known.has(id)) throw new Refusal('left-item-known', { item: id });
    known.add(id);
  }
}

/** Throws Refusal `left-item-unknown`. */
export function admitUndone({ left, defect }: Pick<DefectLife, 'left' | 'defect'>, ids: readonly string[]): void {
  for (const item of ids) {
    if (left.some(({ id }) => id === item)) continue;
    throw new Refusal('left-item-unknown', { item, defect, left: thingsInWords(left) });
  }
}

/** A new alteration takes back the word that all is back to normal. */
export function leave(life: DefectLife, items: readonly LeftItem[]): Pick<DefectLife, 'left' | 'altered' | 'work'> {
  if (items.length === 0) return { left: life.left, altered: life.altered, work: life.work };
  const work = life.work === null ? null : { ...life.work, restored: null };
  return { left: [...life.left, ...items], altered: true, work };
}

export function undo({ left }: DefectLife, ids: readonly string[]): Pick<DefectLife, 'left'> {
  return { left: left.filter(({ id }) => !ids.includes(id)) };
}

/** Throws Refusal `still-left-on-the-aircraft`, naming each thing. */
export function nothingLeft({ defect, left }: DefectLife): void {
  if (left.length > 0) throw new Refusal('still-left-on-the-aircraft', { defect, things: thingsInWords(left) });
}

export function thingsInWords(items: readonly LeftItem[]): string[] {
  return items.length === 0 ? ['nothing'] : items.map(({ kind, where, tag }) => `${kind} at ${where} (${tag})`);
}
