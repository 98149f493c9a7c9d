/**
 * The failed part was swapped to another position (left and right, say): the defect, its placards and what is left on the
 * aircraft go with it, and its clock runs on. M.A.403(c); common practice, no source for the swap itself.
 */
import type { Part, Transferred } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';

export const transferred: ActRule<'transferred'> = {
  kind: 'transferred',
  privilege: 'sign-procedure',
  admit({ defect, item }, { fromUnit, toUnit, reason }) {
    needText('the unit it was moved to', toUnit);
    needText('the reason for the swap', reason);
    if (item === null) throw new Refusal('item-not-identified', { defect });
    const { units } = item;
    if (!units.includes(fromUnit)) throw new Refusal('unit-not-of-this-defect', { unit: fromUnit, defect, units });
  },
  changes: ({ item }, { fromUnit, toUnit }) =>
    item === null ? {} : { item: { ...item, units: moved(item.units, fromUnit, toUnit) } },
};

export interface Transfer extends Command {
  fromUnit: string;
  toUnit: string;
  parts: Part[];
  reason: string;
  /** The units that are installed for the entry on this aircraft. */
  installed: readonly string[];
}

export function transfer(life: DefectLife, command: Transfer, context: Context): Transferred[] {
  const { fromUnit, toUnit, parts, reason, installed } = command;
  if (!installed.includes(toUnit)) {
    throw new Refusal('unit-not-installed', { unit: toUnit, entry: life.item?.entry ?? 'this item', installed });
  }
  const said = { fromUnit, toUnit, parts, reason };
  return decided(transferred, life, {
    kind: 'transferred',
    ...headOf(command, context),
    defect: life.defect,
    ...said,
  });
}

function moved(units: readonly string[], from: string, to: string): string[] {
  return [...new Set(units.map((unit) => (unit === from ? to : unit)))];
}
