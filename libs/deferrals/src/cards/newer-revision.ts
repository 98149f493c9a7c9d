/** Whether the manual went on since a card was written from it. 145.A.45(a)(d). */
import type { CardReference } from '#mel';
import type { CardConfirmation, ManualRevision } from './card-acts.js';

/** The newest revision recorded for the reference or its whole manual, when it was issued after the card's; else null. */
export function newerRevision(
  { manual, task, revision, issuedOn }: CardReference,
  recorded: readonly ManualRevision[],
): ManualRevision | null {
  const newer = recorded.filter(
    (one) =>
      one.manual === manual &&
      (one.task === null || one.task === task) &&
      one.issuedOn > issuedOn &&
      one.revision !== revision,
  );
  return newer.toSorted((one, other) => (one.issuedOn < other.issuedOn ? 1 : -1))[0] ?? null;
}

/** Whether it confirms this card, written from that revision, against the newer one. */
export const confirms = (
  { card, wrote, against }: Pick<CardConfirmation, 'card' | 'wrote' | 'against'>,
  of: { id: string; reference: CardReference },
  newer: ManualRevision,
): boolean => card === of.id && wrote === of.reference.revision && against === newer.revision;
