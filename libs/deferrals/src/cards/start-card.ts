/** Somebody starts a work card on the aircraft, as the card reads that day. 145.A.45(e). */
import type { Card } from '#mel';
import { decided, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import { procedureFor } from '../deferring/procedures-owed.js';
import type { Actor, Authorisation } from '../people.js';
import { Refusal } from '../refusal.js';
import { admitAuthorisation } from '../signing/admit-signature.js';
import type { CardStarted } from './card-acts.js';

export const cardStarted: ActRule<'card-started'> = {
  kind: 'card-started',
  privilege: null,
  admit(life, act) {
    const { card, procedure } = act;
    admitAuthorisation(act.by, act.on, 'sign-procedure', {
      aircraft: life.aircraft,
      enteredAt: act.enteredAt,
      act: act.kind,
      job: { defect: life.defect, acts: life.acts },
    });
    if (procedure !== null) admitProcedure(life, card, procedure);
    const open = life.cards.find(({ started, ended }) => ended === null && started.card.id === card.id);
    if (!open) return;
    const { enteredAt, by } = open.started;
    throw new Refusal('card-open-already', { card: card.title, startedAt: enteredAt, name: by.name });
  },
  changes: ({ cards }, act) => ({ cards: [...cards, { started: act, steps: [], ended: null }] }),
};

function admitProcedure({ deferral, defect }: DefectLife, { id, title: card }: Card, work: string): void {
  if (deferral === null) throw new Refusal('not-deferred', { defect });
  if (procedureFor(deferral.basis, work)?.card !== id) throw new Refusal('card-not-for-procedure', { card, work });
}

export interface StartCard extends Command<Actor> {
  card: Card;
  procedure?: string;
  forFlight?: string;
  on: Authorisation;
}

export function startCard(life: DefectLife, command: StartCard, context: Context): CardStarted[] {
  const { card, procedure, forFlight, on } = command;
  const head = { kind: 'card-started' as const, ...headOf(command, context), defect: life.defect };
  return decided(cardStarted, life, {
    ...head,
    card,
    procedure: procedure ?? null,
    forFlight: forFlight ?? null,
    on,
  });
}
