/** Revisions of manuals and confirmations of cards, as the rules of the cards take them. */
import { type CardConfirmation, confirms, type ManualRevision, newerRevision, type Signature } from '#deferrals';
import type { Card } from '#mel';
import type { Tx } from '#store';
import { peopleIn, readAct } from '../defects/people-in-acts.js';

export async function manualRevisions(tx: Tx): Promise<ManualRevision[]> {
  const rows = await tx.cards.manualRevisions();
  return rows.map(({ manual, task, revision, issuedOn }) => ({
    manual,
    task: task === '' ? null : task,
    revision,
    issuedOn,
  }));
}

export interface AgainstManual {
  newerRevision: ManualRevision | null;
  confirmation: CardConfirmation | null;
}

/** Whether the manual went on since a card was written, and who confirmed the card against what is newest. */
export async function againstManual(tx: Tx, aircraftType: string, card: Card): Promise<AgainstManual> {
  const newer = newerRevision(card.reference, await manualRevisions(tx));
  if (newer === null) return { newerRevision: null, confirmation: null };
  const rows = await tx.cards.confirmations(aircraftType);
  const row = rows.find((one) => confirms(one, card, newer));
  if (!row) return { newerRevision: newer, confirmation: null };
  const people = await tx.people.known(peopleIn(row.signature));
  const { by } = readAct(row.signature, people) as unknown as { by: Signature };
  return { newerRevision: newer, confirmation: { card: row.card, wrote: row.wrote, against: row.against, by } };
}
