/** Work that an aircraft left without is not back-filled afterwards without a signed reason. */
import { Refusal } from '../refusal.js';

interface LateWork {
  work: string;
  doneAt?: string;
  leftMeanwhileAt?: string | null;
  lateReason?: string;
}

/** Throws Refusal when the aircraft left between the work and its entry, and nobody says why. */
export function admitLateWork({ work, doneAt = '', leftMeanwhileAt, lateReason = '' }: LateWork): void {
  if (!leftMeanwhileAt || lateReason.trim() !== '') return;
  throw new Refusal('work-entered-after-departure', { work, doneAt, leftAt: leftMeanwhileAt });
}
