import type { LeftItem } from '#deferrals';
import { newId } from '#store';
import type { LeftBody } from './bodies.js';

/** A new thing left on the aircraft, or one that is there already, by the number it has. */
export function thingOf({ id, kind, where, tag, undo }: LeftBody): LeftItem {
  return { id: id ?? newId(), kind, where, tag, undo };
}
