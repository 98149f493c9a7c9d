/** A placard is removed and accounted for. 145.A.48. */
import type { PlacardRemoved } from '../acts.js';
import { decided, type ActRule } from '../act-rule.js';
import { notCountedByOpenCard } from '../cards/counted-by-card.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { admitUndone, undo } from './left-items.js';
import { notNeededElsewhere } from './not-fitted-elsewhere.js';

export const placardRemoved: ActRule<'placard-removed'> = {
  kind: 'placard-removed',
  privilege: 'sign-procedure',
  admit(life, { item }) {
    const { defect, left } = life;
    const placards = left.filter(({ kind }) => kind === 'placard');
    admitUndone({ defect, left: placards }, [item]);
    notCountedByOpenCard(life, [item]);
  },
  changes: (life, { item }) => undo(life, [item]),
};

export interface RemovePlacard extends Command {
  /** Id of the placard as a thing left on the aircraft. */
  item: string;
}

export function removePlacard(life: DefectLife, command: RemovePlacard, context: Context): PlacardRemoved[] {
  const { item } = command;
  const head = headOf(command, context);
  notNeededElsewhere([item], context);
  return decided(placardRemoved, life, { kind: 'placard-removed', ...head, defect: life.defect, item });
}
