/**
 * A one-off authorisation stands for one signature on the one job it was issued for, and for no other
 * (145.A.30(j)(5), FROM MEMORY; that it is good for one signature is our reading of "one-off", common practice).
 */
import type { Act } from '../acts.js';
import { isSignature, type Signature } from '../people.js';
import { Refusal } from '../refusal.js';

/** The job that is signed for; null where something else than one defect is signed. */
export interface Job {
  defect: string;
  /** Everything that was done for it before. */
  acts: readonly Act[];
}

/** Throws Refusal. An authorisation that is no one-off is admitted. */
export function admitOneOff(
  { authorisation, name }: Pick<Signature, 'authorisation' | 'name'>,
  job: Job | null,
): void {
  const { oneOff, number } = authorisation;
  if (oneOff === undefined) return;
  if (job === null || oneOff.defect !== job.defect) throw new Refusal('one-off-for-another-job', { name, number });
  const used = job.acts.find(({ by }) => isSignature(by) && by.authorisation.number === number);
  if (used) throw new Refusal('one-off-used', { name, number, usedAt: used.enteredAt });
}
