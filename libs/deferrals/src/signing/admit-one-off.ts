/**
 * A one-off authorisation stands for one signature on the one job it was issued for, and for no other
 * (145.A.30(j)(5), FROM MEMORY; that it is good for one signature is our reading of "one-off", common practice). Until that
 * signature its holder may do the steps of a work card of the job, which are not signed one by one.
 */
import type { Act } from '../acts.js';
import type { Signature } from '../people.js';
import { Refusal } from '../refusal.js';
import { signaturesOf } from './signatures-of.js';

/** The job that is signed for; null where something else than one defect is signed. */
export interface Job {
  defect: string;
  /** Everything that was done for it before. */
  acts: readonly Act[];
}

/** Throws Refusal. An authorisation that is no one-off is admitted. `by`: the signature, or who acts without signing. */
export function admitOneOff(
  by: Pick<Signature, 'authorisation' | 'name'> & Partial<Signature>,
  job: Job | null,
): void {
  const { authorisation, name } = by;
  const { oneOff, number } = authorisation;
  if (oneOff === undefined) return;
  if (job === null || oneOff.defect !== job.defect) throw new Refusal('one-off-for-another-job', { name, number });
  const used = earlier(job.acts, by).find((act) =>
    signaturesOf(act).some(({ authorisation: one }) => one.number === number),
  );
  if (used) throw new Refusal('one-off-used', { name, number, usedAt: used.enteredAt });
}

/** The signature of a card writes the work that it did as well: the card that it has just signed is no use before. */
function earlier(acts: readonly Act[], by: Partial<Signature>): readonly Act[] {
  const last = acts.at(-1);
  const ownCard = (last?.kind === 'card-signed' || last?.kind === 'card-stopped') && sameSignature(last.by, by);
  return ownCard ? acts.slice(0, -1) : acts;
}

const sameSignature = (one: Signature, other: Partial<Signature>): boolean =>
  one.person === other.person &&
  one.signedAt === other.signedAt &&
  one.evidence === other.evidence &&
  one.statement === other.statement;
