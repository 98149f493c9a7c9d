/** The work on a card is stopped without being done. Nothing of it may be left on the aircraft. 145.A.48(a)(1). */
import { PAIRS } from '#mel';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';
import type { CardStopped } from './card-acts.js';
import { needCard, withCard } from './card-work.js';
import { accountsOf } from './what-is-missing.js';

export const cardStopped: ActRule<'card-stopped'> = {
  kind: 'card-stopped',
  privilege: 'sign-procedure',
  admit(life, { work: id, reason }) {
    const work = needCard(life, id);
    needText('why the card is stopped', reason);
    // What an earlier card left stays the earlier card's: this one counted none of it out.
    const things = accountsOf(life, work)
      .filter(({ account, state }) => account.over !== 'found' && (state === 'out' || state === 'stays'))
      .map(({ account: { what, where, pair } }) => `still ${PAIRS[pair].out}: ${what} at ${where}`);
    if (things.length > 0) throw new Refusal('card-leaves-things', { card: work.started.card.title, things });
  },
  changes: (life, act) => withCard(life, act.work, (was) => ({ ...was, ended: act })),
};

export interface StopCard extends Command {
  work: string;
  reason: string;
}

export function stopCard(life: DefectLife, command: StopCard, context: Context): CardStopped[] {
  const { work, reason } = command;
  const head = { kind: 'card-stopped' as const, ...headOf(command, context), defect: life.defect };
  return decided(cardStopped, life, { ...head, work, reason });
}
