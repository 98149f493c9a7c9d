import { Inject, Injectable } from '@nestjs/common';
import { isEmail } from 'class-validator';
import { newId, type ReminderAddressRow, type Store, type Tx } from '#store';
import type { Calling } from '../../defects/acting.js';
import { aircraftOr404 } from '../../dispatch/dispatch.service.js';
import { once } from '../../http/once.js';
import { Problem } from '../../http/problem.js';
import type { Session } from '../../http/session.js';
import { CLOCK, type Clock, STORE, WATCH } from '../../http/tokens.js';
import { addressLines, mayEnd, mayEnterForAll } from './address-lines.js';
import type { AddAddressBody } from './bodies.js';
import { refusedPlace } from './refused-place.js';
import { sealed, type WhoseSecret } from './sealed-secret.js';
import type { WatchOptions } from './watch-options.js';
import { newWebhookSecret } from './webhook-signature.js';

const MOST_ADDRESSES = 20;
const DAY = 86_400_000;
/** Entered by one person within a day, those that were turned off again among them: each was sent a code. */
const MOST_MAILBOXES = 20;
/** The same mailbox, whoever entered it. */
const MOST_OF_ONE = 3;

/** Where reminders go: entered, given another secret, turned off. Each is recorded, without the address itself. */
@Injectable()
export class AddressesService {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    @Inject(WATCH) private readonly watch: WatchOptions | null,
  ) {}

  /** The secret is told with the first answer alone: the answer that is kept does not hold it. */
  async add({ session, request, reply }: Calling, body: AddAddressBody): Promise<object> {
    let secret: string | null = null;
    const kept = await once(this.store, session, request, reply, async (tx) => {
      this.admit(body, session);
      await this.admitOneMore(tx, session);
      if (body.kind === 'email') await this.admitMailbox(tx, session, body.address.trim());
      const aircraft = body.aircraft === undefined ? null : await aircraftOr404(tx, body.aircraft);
      secret = body.kind === 'webhook' ? newWebhookSecret() : null;
      const id = newId();
      await tx.reminderAddresses.add({
        id,
        personId: session.personId,
        forAll: body.of === 'operator',
        kind: body.kind,
        address: body.address.trim(),
        label: body.label,
        aircraftId: aircraft?.id ?? null,
        secret: secret === null ? null : this.stored(secret, { operatorId: tx.operatorId, id }),
        createdAt: this.now(),
        // Whoever runs an endpoint shows it by answering to its secret; a mailbox shows nothing.
        confirmedAt: body.kind === 'webhook' ? this.now() : null,
      });
      await this.record(tx, session.personId, 'entered', id);
      const row = await tx.reminderAddresses.get(id);
      if (row?.kind === 'email') await this.putCode(tx, row);
      return { status: 201, body: { address: await this.lineOf(tx, session, id) } };
    });
    return { ...kept, secret };
  }

  end({ session, request, reply }: Calling, id: string): Promise<object> {
    return once(this.store, session, request, reply, async (tx) => {
      const row = await this.own(tx, session, id);
      if (row.endedAt === null) {
        await tx.reminderAddresses.change(id, row.version, { endedAt: this.now(), endedBecause: 'turned off' });
        await this.record(tx, session.personId, 'ended', id);
      }
      return { status: 200, body: { address: await this.lineOf(tx, session, id) } };
    });
  }

  async renewSecret({ session, request, reply }: Calling, id: string): Promise<object> {
    let secret: string | null = null;
    const kept = await once(this.store, session, request, reply, async (tx) => {
      const row = await this.own(tx, session, id);
      if (row.kind !== 'webhook' || row.endedAt !== null) {
        throw new Problem('not-found', 'Only an endpoint in use has a secret.');
      }
      secret = newWebhookSecret();
      const formerUntil = new Date(Date.parse(this.now()) + DAY).toISOString();
      const stored = this.stored(secret, row);
      await tx.reminderAddresses.change(id, row.version, { secret: stored, formerSecret: row.secret, formerUntil });
      await this.record(tx, session.personId, 'secret-renewed', id);
      return { status: 201, body: { address: await this.lineOf(tx, session, id) } };
    });
    return { ...kept, secret };
  }

  private stored(secret: string, whose: WhoseSecret): string {
    return sealed(secret, whose, this.watch?.secretKeys ?? []);
  }

  private admit({ kind, address, of }: AddAddressBody, session: Session): void {
    const refused =
      kind === 'webhook'
        ? refusedPlace(address.trim(), this.watch?.endpointsInside ?? false)
        : isEmail(address.trim())
          ? null
          : 'is no mailbox such as engineer@example.org';
    if (refused !== null) {
      const reason = `${address} ${refused}`;
      throw new Problem('invalid-input', reason, { errors: [{ pointer: '/address', reason }] });
    }
    if (of === 'operator' && !mayEnterForAll(session)) {
      throw new Problem('role-missing', 'An address of the operator is entered by those who watch for all.');
    }
  }

  private async admitOneMore(tx: Tx, { personId }: Session): Promise<void> {
    const own = (await tx.reminderAddresses.inUse()).filter((one) => one.personId === personId);
    if (own.length < MOST_ADDRESSES) return;
    throw new Problem('too-many-addresses', `You entered ${MOST_ADDRESSES} addresses that are in use.`);
  }

  /** Whoever entered and turned off a mailbox over and over would have this server write to it as often. */
  private async admitMailbox(tx: Tx, { personId }: Session, mailbox: string): Promise<void> {
    const since = new Date(Date.parse(this.now()) - DAY).toISOString();
    const lately = await tx.reminderAddresses.mailboxesSince(since);
    const own = lately.filter((one) => one.personId === personId);
    const same = lately.filter(({ address }) => address.toLowerCase() === mailbox.toLowerCase());
    if (own.length < MOST_MAILBOXES && same.length < MOST_OF_ONE) return;
    const reason =
      same.length >= MOST_OF_ONE
        ? `This mailbox was entered ${same.length} times within a day.`
        : `You entered ${own.length} mailboxes within a day.`;
    throw new Problem('too-many-mailboxes', reason);
  }

  /** Asks for a code to be sent there. A server that does nothing by itself leaves it to another one. */
  async putCode(tx: Tx, { id, version, codesAsked }: ReminderAddressRow): Promise<void> {
    await tx.reminderAddresses.change(id, version, { codesAsked: codesAsked + 1 });
    const data = { operatorId: tx.operatorId, addressId: id };
    await this.watch?.jobs.put(tx, 'confirm', [{ key: id, data }]);
  }

  async own(tx: Tx, session: Session, id: string): Promise<ReminderAddressRow> {
    const row = await tx.reminderAddresses.toChange(id);
    if (row && mayEnd(row, session)) return row;
    throw new Problem('not-found', `There is no address ${id} that you may change.`);
  }

  async lineOf(tx: Tx, session: Session, id: string) {
    const row = await tx.reminderAddresses.get(id);
    const [line] = row ? await addressLines(tx, session, [row], this.now()) : [];
    if (!line) throw new Error(`The address ${id} was entered and is not there.`);
    return line;
  }

  async record(tx: Tx, who: string | null, what: string, address: string): Promise<void> {
    await tx.record.append({
      who,
      authorisation: null,
      organisation: null,
      what: `reminder-address.${what}`,
      aircraft: null,
      times: { enteredAt: this.now() },
      payload: { address },
    });
  }
}
