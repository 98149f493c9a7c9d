import { Inject, Injectable } from '@nestjs/common';
import type { Logger } from 'pino';
import type { Store } from '#store';
import { CLOCK, type Clock, LOGGER, STORE, WATCH } from '../http/tokens.js';
import { sendMail } from '../watch/reminders/send-mail.js';
import type { WatchOptions } from '../watch/reminders/watch-options.js';

const MAIL_MS = 30_000;

/**
 * An attempt in vain to prove a secret is recorded for every operator that the owner of the name works for, by reference
 * and without the secret; once the name is locked the owner is told by mail. A name that nobody has is only logged, and
 * not which: what is entered there by mistake is sometimes a secret.
 */
@Injectable()
export class FailedAttempts {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    @Inject(LOGGER) private readonly logger: Logger,
    @Inject(WATCH) private readonly watch: WatchOptions | null,
  ) {}

  /** Does not wait: an answer that took longer for a name that somebody has would tell that somebody has it. */
  tell(personId: string | null, lockedUntil: string | null): void {
    if (personId === null) this.logger.warn({ lockedUntil }, 'An attempt to sign in under a name that nobody has.');
    else {
      void this.record(personId, lockedUntil).catch((error: unknown) =>
        this.logger.error({ error }, 'An attempt in vain to prove a secret could not be recorded.'),
      );
    }
  }

  private async record(personId: string, lockedUntil: string | null): Promise<void> {
    const enteredAt = this.now();
    const mailboxes = new Map<string, string>();
    for (const { operatorId, validFrom, validUntil } of await this.store.identity.membershipsOf(personId)) {
      if (enteredAt < validFrom || (validUntil !== null && validUntil <= enteredAt)) continue;
      await this.store.withOperator(operatorId, null, async (tx) => {
        const payload = { person: await tx.people.referenceOf(personId), lockedUntil };
        const nobody = { who: null, authorisation: null, organisation: null, aircraft: null };
        await tx.record.append({ ...nobody, what: 'sign-in.failed', times: { enteredAt }, payload });
        for (const one of await tx.reminderAddresses.inUse()) {
          if (one.personId === personId && one.kind === 'email' && !one.forAll && one.confirmedAt !== null)
            mailboxes.set(one.address, one.id);
        }
      });
    }
    if (lockedUntil !== null) await this.mail(mailboxes, lockedUntil);
  }

  private async mail(mailboxes: ReadonlyMap<string, string>, lockedUntil: string): Promise<void> {
    const route = this.watch?.mail;
    if (!route) return;
    for (const [to, id] of mailboxes) {
      const mail = {
        id: `locked-${id}-${Date.parse(lockedUntil)}`,
        to,
        subject: 'Your name is locked after attempts to sign in',
        text: `Somebody tried several times in vain to prove your secret. Your name is locked until ${lockedUntil}.\n\nIf it was not you, change your secret and tell whoever administers your operator.\n`,
      };
      const outcome = await sendMail(route, mail, MAIL_MS);
      if (outcome.kind !== 'sent') this.logger.warn({ outcome: outcome.kind }, 'An owner was not told of a lock.');
    }
  }
}
