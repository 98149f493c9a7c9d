/**
 * The failed part was swapped to another position (left and right, say): the defect, its placards and what is left on the
 * aircraft go with it, and its clock runs on. M.A.403(c); common practice, no source for the swap itself.
 */
import type { LeftItem, Part, Transferred } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { noCardOpen } from '../cards/no-card-open.js';
import { askedAfter } from '../correcting/asked-after.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { admitUndone, thingsInWords } from '../leaving/left-items.js';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';
import { noEngineCounted } from './no-engine-counted.js';
import { notDownAlready } from './not-down-already.js';

export const transferred: ActRule<'transferred'> = {
  kind: 'transferred',
  privilege: 'sign-procedure',
  admit(life, { fromUnit, toUnit, reason, moved }) {
    const { defect, item, left } = life;
    noCardOpen(life);
    needText('the unit it was moved to', toUnit);
    needText('the reason for the swap', reason);
    if (item === null) throw new Refusal('item-not-identified', { defect });
    const { units } = item;
    if (!units.includes(fromUnit)) throw new Refusal('unit-not-of-this-defect', { unit: fromUnit, defect, units });
    admitMoved(defect, left, moved);
  },
  changes: (life, act) =>
    life.item === null
      ? {}
      : {
          item: { ...life.item, units: unitsAfter(life.item.units, act.fromUnit, act.toUnit) },
          asked: askedAfter(life, act),
          left: life.left.map((thing) => ({
            ...thing,
            where: act.moved.find((one) => one.item === thing.id)?.where ?? thing.where,
          })),
        },
};

/** Placards, pins and collars go with the part: of each it is said where it is now. Throws Refusal. */
function admitMoved(defect: string, left: readonly LeftItem[], moved: Transferred['moved']): void {
  admitUndone(
    { defect, left },
    moved.map(({ item }) => item),
  );
  for (const { where } of moved) needText('where it is now', where);
  const behind = left.filter(({ id }) => !moved.some(({ item }) => item === id));
  if (behind.length > 0) throw new Refusal('swap-leaves-behind', { defect, things: thingsInWords(behind) });
}

export interface Transfer extends Command {
  fromUnit: string;
  toUnit: string;
  parts: Part[];
  reason: string;
  moved: Transferred['moved'];
  /** The other defects of the aircraft: no unit is down twice. */
  others: readonly DefectLife[];
  /** The units that are installed for the entry on this aircraft. */
  installed: readonly string[];
}

export function transfer(life: DefectLife, command: Transfer, context: Context): Transferred[] {
  const { fromUnit, toUnit, parts, reason, moved, others, installed } = command;
  if (!installed.includes(toUnit)) {
    throw new Refusal('unit-not-installed', { unit: toUnit, entry: life.item?.entry ?? 'this item', installed });
  }
  const units = life.item?.units ?? [];
  if (units.includes(fromUnit) && units.includes(toUnit)) {
    throw new Refusal('swap-among-failed', { unit: toUnit, defect: life.defect, units });
  }
  const item = life.item === null ? null : { ...life.item, units: unitsAfter(life.item.units, fromUnit, toUnit) };
  notDownAlready(life.defect, item, others);
  noEngineCounted(life, toUnit);
  const said = { fromUnit, toUnit, parts, reason, moved };
  return decided(transferred, life, {
    kind: 'transferred',
    ...headOf(command, context),
    defect: life.defect,
    ...said,
  });
}

function unitsAfter(units: readonly string[], from: string, to: string): string[] {
  return [...new Set(units.map((unit) => (unit === from ? to : unit)))];
}
