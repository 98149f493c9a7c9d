import { Inject, Injectable } from '@nestjs/common';
import type { HeadExport, Store, Tx } from '#store';
import { Problem } from '../http/problem.js';
import type { Session } from '../http/session.js';
import { CLOCK, type Clock, HEADS, STORE } from '../http/tokens.js';

/** A backup is brought up to date within 24 hours of any maintenance (AMC M.A.614(a) 5, SEEN). */
const UNSAVED_AT_MOST_HOURS = 24;
/** A signed head that is older is called old: a day with two hours to spare (common practice, no source). */
const HEAD_OLDEST_HOURS = 26;
const HOUR_MS = 3_600_000;
/** Read through within the time that a page waits; a longer record is for the command. */
const MOST_ENTRIES = 100_000;

/** How the record stands, and whether it fits from its first entry to its newest. */
@Injectable()
export class RecordStateService {
  private verifying = false;

  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    @Inject(HEADS) private readonly heads: Pick<HeadExport, 'signNow'> | null,
  ) {}

  /** @returns how many entries, how old the last signed head is, and since when entries stand in no backup */
  async state(tx: Tx): Promise<object> {
    const at = this.now();
    const head = await tx.record.head();
    const backup = await tx.record.lastOf('backup.made');
    const [signed] = await tx.proofs.signedHeads(1);
    return {
      at,
      size: head?.size ?? 0,
      root: head?.root ?? null,
      mostVerified: MOST_ENTRIES,
      backup: saved(backup?.entry.times.enteredAt ?? null, await tx.record.unsavedSince(), at),
      signedHead: { ...age(signed?.signedAt ?? null, at, HEAD_OLDEST_HOURS), size: signed?.size ?? null },
      signsHeads: this.heads !== null,
    };
  }

  /**
   * Reads the whole record and compares all of it. One at a time in this process: each reads every entry there is.
   * @throws Problem `too-long-to-verify-here`, `too-many-requests`
   */
  async verify({ operatorId, personId }: Session): Promise<object> {
    const head = await this.store.withOperator(operatorId, personId, (tx) => tx.record.head());
    if ((head?.size ?? 0) > MOST_ENTRIES) {
      throw new Problem('too-long-to-verify-here', `The record has ${head?.size} entries.`);
    }
    if (this.verifying)
      throw new Problem('too-many-requests', 'Somebody is having a record verified at this moment.');
    this.verifying = true;
    try {
      const { entries, waiting, misfit, head: over } = await this.store.verifyRecordOf(operatorId);
      return { at: this.now(), entries, waiting, root: over.root, misfit };
    } finally {
      this.verifying = false;
    }
  }
}

/** An old backup in which everything stands is good; one is missing where none was ever made. */
function saved(made: string | null, unsavedSince: string | null, at: string) {
  const unsavedHours = hoursSince(unsavedSince, at);
  const old = made === null || (unsavedHours !== null && unsavedHours >= UNSAVED_AT_MOST_HOURS);
  return { made, hours: hoursSince(made, at), unsavedSince, unsavedHours, atMostHours: UNSAVED_AT_MOST_HOURS, old };
}

/** Whole hours, never rounded up. */
function hoursSince(from: string | null, at: string): number | null {
  return from === null ? null : Math.max(0, Math.floor((Date.parse(at) - Date.parse(from)) / HOUR_MS));
}

/** What was never made counts as old. */
function age(made: string | null, at: string, oldestHours: number) {
  const hours = hoursSince(made, at);
  return { made, hours, oldestHours, old: hours === null || hours >= oldestHours };
}
