/** A placard is fitted, by the crew too. It is one of the things left on the aircraft. ORO.MLR.105; 14 CFR 121.628. */
import type { LeftItem, PlacardFitted } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import { actsAsCorrected } from '../correcting/as-corrected.js';
import type { DefectLife } from '../defect-life.js';
import type { Actor, Signature } from '../people.js';
import { needText } from '../writing-up/need-text.js';
import { admitLeft, leave } from './left-items.js';
import { notFittedElsewhere } from './not-fitted-elsewhere.js';

export const placardFitted: ActRule<'placard-fitted'> = {
  kind: 'placard-fitted',
  privilege: null,
  admit(life, { text, item }) {
    needText('the text of the placard', text);
    admitLeft(life, [item]);
  },
  changes: (life, { item }) => leave(life, [item]),
};

export interface FitPlacard extends Command<Actor | Signature> {
  text: string;
  position: string;
  /** Number on the placard. */
  tag: string;
}

export function fitPlacard(life: DefectLife, command: FitPlacard, context: Context): PlacardFitted[] {
  const { id, text, position, tag } = command;
  const item: LeftItem = { id, kind: 'placard', where: position, tag, undo: 'remove the placard' };
  const head = headOf(command, context);
  notFittedElsewhere([item], context);
  return decided(placardFitted, life, { kind: 'placard-fitted', ...head, defect: life.defect, text, item });
}

/** The texts of the placards that are fitted now, as they read once corrected. */
export function placardsFitted(life: DefectLife): string[] {
  const { left } = life;
  return actsAsCorrected(life).flatMap((act) =>
    act.kind === 'placard-fitted' && left.some(({ id }) => id === act.item.id) ? [act.text] : [],
  );
}
