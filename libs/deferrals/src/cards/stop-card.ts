/**
 * The work on a card is stopped without being done. Nothing of it may be left on the aircraft, and what was done counts as
 * work that is not complete. 145.A.48(a)(1); 145.A.50(e).
 */
import { referenceInWords } from '#mel';
import type { Act } from '../acts.js';
import { decided, follow, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { rectify } from '../rectifying/rectify.js';
import { Refusal } from '../refusal.js';
import { needText } from '../writing-up/need-text.js';
import { needCard, withCard } from './card-work.js';
import { leavesWork, stoppedInWords } from './stopped-half-worked.js';
import { accountsOf, stillOutInWords } from './what-is-missing.js';

export const cardStopped: ActRule<'card-stopped'> = {
  kind: 'card-stopped',
  privilege: 'sign-procedure',
  admit(life, { work: id, reason }) {
    const work = needCard(life, id);
    needText('why the card is stopped', reason);
    // What an earlier card left stays the earlier card's: this one counted none of it out.
    const things = accountsOf(life, work)
      .filter(({ account, state }) => account.over !== 'found' && (state === 'out' || state === 'stays'))
      .map(stillOutInWords);
    if (things.length > 0) throw new Refusal('card-leaves-things', { card: work.started.card.title, things });
  },
  changes: (life, act) => withCard(life, act.work, (was) => ({ ...was, ended: act })),
};

export interface StopCard extends Command {
  work: string;
  reason: string;
  /** Identity for the act that follows from it, if one does. */
  thenId: string;
}

/** What was done on it is work that is not complete: it is released as that, or taken up again. */
export function stopCard(life: DefectLife, command: StopCard, context: Context): Act[] {
  const { work, reason, thenId, by } = command;
  const head = { kind: 'card-stopped' as const, ...headOf(command, context), defect: life.defect };
  const acts = decided(cardStopped, life, { ...head, work, reason });
  const [stopped] = acts;
  const card = needCard(life, work);
  if (!stopped || !leavesWork(card)) return acts;
  const said = { workDone: stoppedInWords(card, reason), reference: referenceInWords(card.started.card.reference) };
  return [
    stopped,
    ...rectify(follow(cardStopped, life, stopped), { id: thenId, by, ...said, complete: false }, context),
  ];
}
