/**
 * Which item failed: the entry and the unit, or the units of which one failed. Until somebody says so there is no basis.
 * Under a deferral the item may only be narrowed down; another one is a change of row, a moved part is a transfer.
 */
import type { FailedItem, Identified } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { askedAfter } from '../correcting/asked-after.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import type { Actor, Signature } from '../people.js';
import { Refusal } from '../refusal.js';

export const identified: ActRule<'identified'> = {
  kind: 'identified',
  privilege: null,
  admit(life, { item }) {
    if (item.entry !== null && item.units.length === 0) throw new Refusal('no-unit-named', { entry: item.entry });
    if (life.deferral !== null && life.item !== null && !narrows(item, life.item)) {
      throw new Refusal('item-under-deferral', { defect: life.defect, current: itemInWords(life.item) });
    }
  },
  changes: (life, act) => ({ item: act.item, asked: askedAfter(life, act) }),
};

export interface Identify extends Command<Actor | Signature> {
  item: FailedItem;
  /** The units that are installed for the entry on this aircraft. */
  installed: readonly string[];
}

export function identify(life: DefectLife, command: Identify, context: Context): Identified[] {
  const { item, installed } = command;
  const unit = item.units.find((name) => !installed.includes(name));
  if (item.entry !== null && unit !== undefined) {
    throw new Refusal('unit-not-installed', { unit, entry: item.entry, installed });
  }
  return decided(identified, life, { kind: 'identified', ...headOf(command, context), defect: life.defect, item });
}

function narrows(next: FailedItem, now: FailedItem): boolean {
  const same = next.entry === now.entry && next.subEntry === now.subEntry;
  return same && next.units.length > 0 && next.units.every((unit) => now.units.includes(unit));
}

export function itemInWords({ entry, units }: FailedItem): string {
  const which = units.length > 1 ? `one of ${units.join(', ')}` : (units[0] ?? 'no unit named');
  return `${entry ?? 'an item that the MEL does not list'} (${which})`;
}
