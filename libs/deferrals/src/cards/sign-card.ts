/**
 * The card is signed: every step done, every pair matched, the card confirmed against the newest revision of its manual.
 * A card of a procedure does that procedure; a card of a rectification is a piece of work; a card of a restoration puts
 * back to normal what it can. 145.A.48(a); 145.A.50(a); 145.A.45(a)(d).
 */
import { referenceInWords } from '#mel';
import type { Act } from '../acts.js';
import { decided, follow, type ActRule } from '../act-rule.js';
import { headOf, type Command, type Context } from '../context.js';
import type { DefectLife } from '../defect-life.js';
import type { Signature } from '../people.js';
import { rectify } from '../rectifying/rectify.js';
import { restore } from '../rectifying/restore.js';
import { Refusal } from '../refusal.js';
import { admitSignature } from '../signing/admit-signature.js';
import type { CardConfirmation, CardSigned, ManualRevision } from './card-acts.js';
import type { CardWork } from './card-life.js';
import { needCard, withCard } from './card-work.js';
import { confirms } from './newer-revision.js';
import { missingOf } from './what-is-missing.js';

export const cardSigned: ActRule<'card-signed'> = {
  kind: 'card-signed',
  privilege: 'sign-procedure',
  admit(life, act) {
    const work = needCard(life, act.work);
    const { card } = work.started;
    const missing = missingOf(life, work);
    if (missing.length > 0) throw new Refusal('card-not-finished', { card: card.title, missing });
    admitConfirmed(life, work, act);
    admitOwnSteps(work, act.by);
  },
  changes: (life, act) => ({
    ...withCard(life, act.work, (was) => ({ ...was, ended: act })),
    procedures: [...life.procedures, ...procedureDone(life, act)],
  }),
};

/** Throws Refusal `card-not-confirmed`. */
function admitConfirmed({ aircraft }: DefectLife, { started }: CardWork, act: CardSigned): void {
  const { card } = started;
  const { newerRevision: newer, confirmation } = act;
  if (newer === null) return;
  if (confirmation !== null && confirms(confirmation, card, newer)) {
    const { by } = confirmation;
    admitSignature(by, 'confirm-card', { aircraft, enteredAt: by.signedAt, act: 'card-confirmed' });
    return;
  }
  const reference = referenceInWords(card.reference);
  const { revision, issuedOn } = newer;
  throw new Refusal('card-not-confirmed', { card: card.title, reference, newer: revision, issuedOn });
}

/** A category A licence signs for work that its holder did. Inspections are others' by their nature. */
function admitOwnSteps({ started, steps }: CardWork, by: Signature): void {
  if (by.authorisation.licenceCategories.some((category) => category !== 'A')) return;
  const others = steps.filter((act) => act.kind === 'card-stepped' && act.by.person !== by.person);
  if (others.length === 0) return;
  const names = [...new Set(others.map((act) => act.by.name))];
  throw new Refusal('card-steps-of-others', { name: by.name, card: started.card.title, others: names });
}

/** What it leaves is what it counted out to stay, and is still there. */
function procedureDone(
  life: DefectLife,
  { id, work, by, recordedAt, enteredAt }: CardSigned,
): DefectLife['procedures'] {
  const { started, steps } = needCard(life, work);
  const { procedure, forFlight } = started;
  if (procedure === null) return [];
  const leaves = steps.flatMap((act) => {
    const item = act.kind === 'card-stepped' && act.result.kind === 'out' ? act.result.item : null;
    return item && life.left.some((left) => left.id === item.id) ? [item] : [];
  });
  return [{ id, by, recordedAt, enteredAt, work: procedure, doneAt: enteredAt, validUntil: null, forFlight, leaves }];
}

export interface SignCard extends Command {
  work: string;
  newerRevision: ManualRevision | null;
  confirmation: CardConfirmation | null;
  /** Identity for the act that follows from it, if one does. */
  thenId: string;
}

export function signCard(life: DefectLife, command: SignCard, context: Context): Act[] {
  const { work, newerRevision, confirmation } = command;
  const head = { kind: 'card-signed' as const, ...headOf(command, context), defect: life.defect };
  const acts = decided(cardSigned, life, { ...head, work, newerRevision, confirmation });
  const [signed] = acts;
  if (!signed) return [];
  return [signed, ...whatFollows(needCard(life, work), follow(cardSigned, life, signed), command, context)];
}

function whatFollows(work: CardWork, life: DefectLife, { thenId, by }: SignCard, context: Context): Act[] {
  const { title, purpose, reference: cited } = work.started.card;
  const reference = referenceInWords(cited);
  const head = { id: thenId, by };
  if (purpose === 'rectification') {
    const workDone = `Work card: ${title}`;
    return rectify(life, { ...head, workDone, reference, complete: true, parts: partsOf(work) }, context);
  }
  const restorable = purpose === 'restoration' && life.work !== null && life.left.length === 0;
  return restorable ? restore(life, { ...head, reference }, context) : [];
}

function partsOf({ steps }: CardWork): { partNumber: string; certificate: string }[] {
  return steps.flatMap((act) =>
    act.kind === 'card-stepped' && act.result.kind === 'renewed'
      ? [{ partNumber: act.result.partNumber, certificate: act.result.certificate ?? act.result.batch }]
      : [],
  );
}
