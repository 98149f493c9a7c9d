/** What acts of every kind are made of. */
import type { Leaves } from '#mel';
import type { Actor, Signature } from './people.js';

/**
 * The three times of an act, ISO 8601 with the offset as written. `recordedAt` is the log's: it alone sets the day of
 * discovery. `enteredAt` is when this program was told. `occurredAt` is absent where nobody wrote it down.
 */
export interface Times {
  occurredAt?: string;
  recordedAt: string;
  enteredAt: string;
  /** Why it was entered late; needed when it was. */
  lateReason?: string;
}

export interface ActBase<Kind extends string, By extends Actor | Signature = Signature> extends Times {
  kind: Kind;
  /** Identity of this act, given by the caller; corrections point at it. */
  id: string;
  defect: string;
  by: By;
}

/** Something left altered on the aircraft. `tag` is the number on its collar, streamer, placard or label. */
export interface LeftItem {
  id: string;
  kind: Leaves['kind'];
  where: string;
  tag: string;
  undo: string;
}
