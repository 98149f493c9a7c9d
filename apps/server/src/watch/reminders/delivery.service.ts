import { Inject, Injectable } from '@nestjs/common';
import type { Job, ReminderAddressRow, ReminderRow, Store, Tx } from '#store';
import { CLOCK, type Clock, STORE, WATCH } from '../../http/tokens.js';
import { failed, type Outcome } from './outcome.js';
import { pauseAfter } from './pause.js';
import { postWebhook } from './post-webhook.js';
import { isKeeping, keepingEvent, keepingSubject, keepingText } from './keeping-content.js';
import { eventOf, type ReminderContent, subjectOf, textOf } from './reminder-content.js';
import { opened } from './sealed-secret.js';
import { sendMail } from './send-mail.js';
import type { WatchOptions } from './watch-options.js';
import { webhookHeaders } from './webhook-signature.js';

/** One attempt, claimed: nobody else tries the same reminder until it is over or was given up. */
interface Attempt {
  reminder: ReminderRow;
  address: ReminderAddressRow;
}

/** Of the lease of a job, so that an attempt is over before the job is given to another server. */
const SHARE_OF_LEASE = 0.75;

/**
 * Hands reminders over. An attempt is written down before it is made, and its outcome with the end of its job in one
 * transaction. A server that dies in between leaves the reminder waiting, and it is sent again under the same id.
 */
@Injectable()
export class DeliveryService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    @Inject(WATCH) private readonly watch: WatchOptions | null,
  ) {}

  async deliver(job: Job<'deliver'>): Promise<void> {
    const { operatorId } = job.data;
    const options = this.watch;
    if (options === null) throw new Error('This server does nothing by itself.');
    const attempt = await this.store.withOperator(operatorId, null, (tx) => this.claim(tx, job, options));
    if (attempt === null) return;
    const outcome = await this.handOver(attempt, options);
    await this.store.withOperator(operatorId, null, (tx) => this.settle(tx, job, attempt, outcome, options));
  }

  private async claim(tx: Tx, job: Job<'deliver'>, { jobs }: WatchOptions): Promise<Attempt | null> {
    const { operatorId, reminderId } = job.data;
    const reminder = await tx.reminders.get(reminderId);
    const now = this.now();
    if (reminder === null || reminder.nextAt === null) return (await job.done(tx), null);
    const waitSeconds = Math.ceil((Date.parse(reminder.nextAt) - Date.parse(now)) / 1000);
    if (waitSeconds > 0) {
      await job.done(tx);
      await jobs.put(tx, 'deliver', [
        { key: reminderId, data: { operatorId, reminderId }, afterSeconds: waitSeconds },
      ]);
      return null;
    }
    const address = await tx.reminderAddresses.get(reminder.addressId);
    const defect = reminder.defectId === null ? null : await tx.defects.get(reminder.defectId);
    const needless = needlessBecause(address, defect?.closedAt ?? null);
    if (address === null || needless !== null) {
      await tx.reminders.change(reminderId, reminder.version, { state: 'dropped', nextAt: null, problem: needless });
      return (await job.done(tx), null);
    }
    const nextAt = new Date(Date.parse(now) + jobs.leaseSeconds * 1000).toISOString();
    await tx.reminders.change(reminderId, reminder.version, {
      attempts: reminder.attempts + 1,
      triedAt: now,
      nextAt,
    });
    return { reminder: { ...reminder, attempts: reminder.attempts + 1, version: reminder.version + 1 }, address };
  }

  private async handOver({ reminder, address }: Attempt, options: WatchOptions): Promise<Outcome> {
    const told = inWords(reminder);
    const longestMs = options.jobs.leaseSeconds * 1000 * SHARE_OF_LEASE;
    if (address.kind === 'webhook') {
      const body = told.event();
      const now = this.now();
      const secrets = secretsOf(address, now, options.secretKeys ?? []);
      if (secrets === null)
        return failed('The key that opens the secret of this endpoint was not named to this server.');
      const timestamp = Math.floor(Date.parse(now) / 1000);
      const headers = webhookHeaders({ id: reminder.id, timestamp, body }, secrets);
      const posted = { address: address.address, body, headers: { ...headers, 'content-type': EVENT_TYPE } };
      return postWebhook(posted, { mayInside: options.endpointsInside, longestMs, now });
    }
    if (options.mail === null) return failed('No mail server was named to this server.');
    const mail = { id: reminder.id, to: address.address, subject: told.subject, text: told.text };
    return sendMail(options.mail, mail, longestMs);
  }

  private async settle(
    tx: Tx,
    job: Job<'deliver'>,
    { reminder, address }: Attempt,
    outcome: Outcome,
    { jobs, firstPauseSeconds = 60 }: WatchOptions,
  ): Promise<void> {
    const { id, version } = reminder;
    const now = this.now();
    await job.done(tx);
    if (outcome.kind === 'sent') {
      await tx.reminders.change(id, version, { state: 'sent', nextAt: null, sentAt: now, problem: null });
      return;
    }
    const { problem } = outcome;
    if (outcome.kind === 'refused') {
      await tx.reminders.change(id, version, { state: 'refused', nextAt: null, problem });
      if (outcome.gone) await endAddress(tx, address, problem, now);
      return;
    }
    const pause = pauseAfter(reminder.attempts, firstPauseSeconds, outcome.retryAfterSeconds);
    const nextAt = new Date(Date.parse(now) + pause * 1000).toISOString();
    await tx.reminders.change(id, version, { nextAt, problem });
    await jobs.put(tx, 'deliver', [{ key: id, data: job.data, afterSeconds: pause }]);
  }
}

function inWords(reminder: ReminderRow): { subject: string; text: string; event(): string } {
  const { content } = reminder;
  if (isKeeping(content)) {
    return {
      subject: keepingSubject(content),
      text: keepingText(content),
      event: () => keepingEvent(reminder, content),
    };
  }
  const of = content as ReminderContent;
  return { subject: subjectOf(of), text: textOf(of), event: () => eventOf(reminder, of) };
}

const EVENT_TYPE = 'application/cloudevents+json; charset=utf-8';

function needlessBecause(address: ReminderAddressRow | null, closedAt: string | null): string | null {
  if (address === null || address.endedAt !== null) {
    return `Its address is no longer in use: ${address?.endedBecause ?? 'it is not there'}`;
  }
  return closedAt === null ? null : 'The item was closed before it could be sent.';
}

/** Null where one of them cannot be opened. */
function secretsOf(address: ReminderAddressRow, now: string, keys: readonly Buffer[]): string[] | null {
  const { secret, formerSecret, formerUntil } = address;
  const former = formerUntil !== null && now < formerUntil ? formerSecret : null;
  const secrets = [secret, former].flatMap((stored) => (stored === null ? [] : [opened(stored, address, keys)]));
  return secrets.every((one) => one !== null) ? secrets : null;
}

/** Unless somebody has ended or changed it meanwhile. */
async function endAddress(tx: Tx, { id }: ReminderAddressRow, because: string, now: string): Promise<void> {
  const address = await tx.reminderAddresses.toChange(id);
  if (address === null || address.endedAt !== null) return;
  await tx.reminderAddresses.change(id, address.version, { endedAt: now, endedBecause: because });
  await tx.record.append({
    who: null,
    authorisation: null,
    organisation: null,
    what: 'reminder-address.ended',
    aircraft: null,
    times: { enteredAt: now },
    payload: { address: id, because },
  });
}
