/**
 * Something is left altered on the aircraft under this defect: a breaker pulled, a pin fitted, a panel open, equipment
 * removed. It is named with its place, its tag and how to undo it, and stays until somebody signs that it is undone.
 * 145.A.48.
 */
import type { LeftItem, LeftOnTheAircraft } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { admitRemoval } from './admit-removal.js';
import { admitLeft, leave } from './left-items.js';
import { notFittedElsewhere } from './not-fitted-elsewhere.js';

export const leftOnTheAircraft: ActRule<'left-on-the-aircraft'> = {
  kind: 'left-on-the-aircraft',
  privilege: 'sign-procedure',
  admit(life, { items }) {
    admitLeft(life, items);
    if (life.work === null) admitRemoval(life.defect, life.deferral?.basis ?? null, items);
  },
  changes: (life, { items }) => leave(life, items),
};

export interface LeaveOnAircraft extends Command {
  items: LeftItem[];
}

export function leaveOnAircraft(life: DefectLife, command: LeaveOnAircraft, context: Context): LeftOnTheAircraft[] {
  const { items } = command;
  const head = headOf(command, context);
  notFittedElsewhere(items, context);
  return decided(leftOnTheAircraft, life, { kind: 'left-on-the-aircraft', ...head, defect: life.defect, items });
}
