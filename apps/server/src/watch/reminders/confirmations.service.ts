import { Inject, Injectable } from '@nestjs/common';
import type { Job, ReminderAddressRow, Store, Tx } from '#store';
import type { Calling } from '../../defects/acting.js';
import { once } from '../../http/once.js';
import { Problem } from '../../http/problem.js';
import { CLOCK, type Clock, STORE, WATCH } from '../../http/tokens.js';
import { AddressesService } from './addresses.service.js';
import { hashOfCode, isWaitedFor, MOST_CODES, newCode } from './mailbox-code.js';
import { sendMail } from './send-mail.js';
import type { WatchOptions } from './watch-options.js';

const AGAIN_SECONDS = 60;
const SHARE_OF_LEASE = 0.75;

/** Shows that the owner of a mailbox reads it: a code is sent there, and told here. */
@Injectable()
export class ConfirmationsService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    @Inject(WATCH) private readonly watch: WatchOptions | null,
    private readonly addresses: AddressesService,
  ) {}

  /** Sends another code; the one before is good no longer. */
  ask({ session, request, reply }: Calling, id: string): Promise<object> {
    return once(this.store, session, request, reply, async (tx) => {
      const row = await this.addresses.own(tx, session, id);
      if (row.kind !== 'email' || row.confirmedAt !== null || row.endedAt !== null) throw nothingToTell();
      if (row.codesAsked >= MOST_CODES)
        throw new Problem('too-many-codes', `${MOST_CODES} codes were sent to this mailbox.`);
      await this.addresses.putCode(tx, row);
      return { status: 200, body: { address: await this.addresses.lineOf(tx, session, id) } };
    });
  }

  /** A try is counted before it is looked at, so that a refusal does not take the count back. */
  async tell({ session, request, reply }: Calling, id: string, code: string): Promise<object> {
    const looksAt = await this.store.withOperator(session.operatorId, session.personId, async (tx) => {
      const row = await this.addresses.own(tx, session, id);
      if (row.confirmedAt !== null) return true;
      if (!isWaitedFor(row, this.now())) return false;
      await tx.reminderAddresses.change(id, row.version, { codeTries: row.codeTries + 1 });
      return true;
    });
    if (!looksAt) throw nothingToTell();
    return once(this.store, session, request, reply, async (tx) => {
      const row = await this.addresses.own(tx, session, id);
      if (row.confirmedAt === null) {
        if (hashOfCode(id, code) !== row.codeHash) throw new Problem('code-not-right', 'It is another code.');
        const confirmed = { confirmedAt: this.now(), codeHash: null, codeSentAt: null, codeProblem: null };
        await tx.reminderAddresses.change(id, row.version, confirmed);
        await this.addresses.record(tx, session.personId, 'confirmed', id);
      }
      return { status: 200, body: { address: await this.addresses.lineOf(tx, session, id) } };
    });
  }

  /** Hands one code to the mail server. Its hash is written before, so that whatever arrives can be told. */
  async send(job: Job<'confirm'>): Promise<void> {
    const { operatorId, addressId } = job.data;
    const options = this.watch;
    if (options === null) throw new Error('This server does nothing by itself.');
    const code = newCode();
    const row = await this.in(operatorId, (tx) => this.claim(tx, job, code));
    if (row === null) return;
    const { mail, jobs } = options;
    const outcome =
      mail === null
        ? ({ kind: 'failed', problem: 'No mail server was named to this server.' } as const)
        : await sendMail(mail, mailOf(row, code), jobs.leaseSeconds * 1000 * SHARE_OF_LEASE);
    await this.in(operatorId, async (tx) => {
      const now = await tx.reminderAddresses.toChange(addressId);
      await job.done(tx);
      if (now === null || now.confirmedAt !== null || now.endedAt !== null || outcome.kind === 'sent') return;
      if (outcome.kind === 'refused') {
        const ended = { endedAt: this.now(), endedBecause: outcome.problem };
        await tx.reminderAddresses.change(addressId, now.version, ended);
        await this.addresses.record(tx, null, 'ended', addressId);
        return;
      }
      await tx.reminderAddresses.change(addressId, now.version, { codeProblem: outcome.problem });
      const again = { key: addressId, data: job.data, afterSeconds: options.firstPauseSeconds ?? AGAIN_SECONDS };
      await jobs.put(tx, 'confirm', [again]);
    });
  }

  private async claim(tx: Tx, job: Job<'confirm'>, code: string): Promise<ReminderAddressRow | null> {
    const { addressId } = job.data;
    const row = await tx.reminderAddresses.toChange(addressId);
    if (row === null || row.confirmedAt !== null || row.endedAt !== null) return (await job.done(tx), null);
    const sent = { codeHash: hashOfCode(addressId, code), codeSentAt: this.now(), codeTries: 0, codeProblem: null };
    await tx.reminderAddresses.change(addressId, row.version, sent);
    return row;
  }

  private in<T>(operatorId: string, work: (tx: Tx) => Promise<T>): Promise<T> {
    return this.store.withOperator(operatorId, null, work);
  }
}

function nothingToTell(): Problem {
  return new Problem('no-code-to-tell', 'This address waits for no code, or its code is too old or was told wrong.');
}

/** Says nothing of the operator or of an aircraft: nobody knows yet who reads it. */
function mailOf({ id, address, codesAsked }: ReminderAddressRow, code: string) {
  const text = [
    `Your code: ${code.slice(0, 4)} ${code.slice(4)}`,
    '',
    'Somebody entered this mailbox in Proviso, to be reminded of deadlines. Tell the code there within a day, and',
    'reminders begin. If it was not you, do nothing: nothing more is sent here.',
    '',
  ].join('\n');
  return { id: `${id}.${codesAsked}`, to: address, subject: 'Code for reminders', text };
}
