/**
 * Three times are kept: when it occurred, when it was written in the log, when it was entered here.
 *
 * The log's time alone sets the day of discovery. It cannot lie in the future of the entry, nor before it occurred.
 */
import type { Times } from '../acts.js';
import { before, minutesBetween } from '../instant.js';
import { Refusal } from '../refusal.js';

/** Throws Refusal when the three times cannot be in that order. */
export function admitTimes({ occurredAt, recordedAt, enteredAt }: Times): void {
  if (before(enteredAt, recordedAt)) throw new Refusal('recorded-in-the-future', { recordedAt, enteredAt });
  if (occurredAt !== undefined && before(recordedAt, occurredAt)) {
    throw new Refusal('occurred-after-recorded', { occurredAt, recordedAt });
  }
}

/** Throws Refusal when an entry is late, by the operator's setting, and nobody says why. */
export function needLateReason({ recordedAt, enteredAt, lateReason }: Times, lateAfterMinutes: number): void {
  const minutesLate = minutesBetween(recordedAt, enteredAt);
  if (minutesLate > lateAfterMinutes && (lateReason ?? '').trim() === '') {
    throw new Refusal('late-entry-needs-reason', { recordedAt, minutesLate });
  }
}
