import { Inject, Injectable } from '@nestjs/common';
import type { MovementMessageRow, MovementTrayRow, Tx } from '#store';
import { Problem } from '../http/problem.js';
import type { Session } from '../http/session.js';
import { CLOCK, type Clock } from '../http/tokens.js';
import type { MendBody } from './bodies.js';
import { IntakeService, type Received } from './intake.service.js';
import type { ReadMessage } from './reading.js';
import { sortedOut } from './sort-out.js';
import { keyOf } from './tray-book.js';

const MOST_SHOWN = 500;

/** What is right in itself and lacks another message: it stays in use when a person sends that one. */
const LACKS_ANOTHER = ['no-departure', 'no-arrival', 'differs-from-person'];

/** What reading could not settle, and what people make of it. The text that came in stays as it was. */
@Injectable()
export class TrayService {
  constructor(
    @Inject(CLOCK) private readonly now: Clock,
    private readonly intake: IntakeService,
  ) {}

  list(tx: Tx, state: MovementTrayRow['state']) {
    return tx.movements.tray(state, MOST_SHOWN);
  }

  /** With a text: that is read instead. Without: a person looked at it, and it stays as it is. */
  async mend(tx: Tx, session: Session, id: string, { text, reason }: MendBody) {
    await tx.movements.takeIntake();
    const entry = await tx.movements.trayEntry(id);
    const message = entry ? await tx.movements.message(entry.messageId) : null;
    if (!entry || !message) throw new Problem('not-found', `There is no tray entry ${id} here.`);
    if (entry.state !== 'open')
      throw new Problem('changed-meanwhile', `The entry is ${entry.state} since ${entry.closedAt}.`);
    const read = text === undefined ? null : await this.readable(tx, text, message);
    const replaced = message.state === 'tray' || (read !== null && !LACKS_ANOTHER.includes(entry.reason));
    if (replaced) await tx.movements.changeMessage(message.id, message.version, { state: 'mended' });
    const closing = replaced ? await this.openAbout(tx, message) : [entry];
    const now = this.now();
    const closed = { state: 'mended' as const, closedAt: now, closedBy: session.personId, why: reason };
    for (const one of closing) await tx.movements.changeTray(one.id, one.version, closed);
    await this.record(tx, session, { entry, message, reason, replaced, now });
    const received =
      text === undefined || read === null ? null : await this.receive(tx, session, text, message, read);
    if (received) await this.refuseUncleared(tx, entry);
    if (received?.deliveryId) await this.linkTo(tx, closing, received.deliveryId);
    return { id, received };
  }

  /** What a person sends must be readable whole, or nothing is changed. */
  private async readable(tx: Tx, text: string, message: MovementMessageRow): Promise<ReadMessage[]> {
    const read = this.intake.read(text, message.receivedAt, await this.intake.reading(tx));
    const sorted = await sortedOut(tx, read, this.now(), true);
    const errors = sorted.flatMap(({ tray }) => (tray ? [{ pointer: '/text', reason: tray.sentence }] : []));
    if (errors.length > 0) throw new Problem('invalid-input', errors.map((one) => one.reason).join(' '), { errors });
    return read;
  }

  private receive(
    tx: Tx,
    session: Session,
    text: string,
    mends: MovementMessageRow,
    read: readonly ReadMessage[],
  ): Promise<Received> {
    return this.intake.receive(tx, session, { text, receivedAt: mends.receivedAt, cameBy: 'mended', mends }, read);
  }

  private async openAbout(tx: Tx, { id }: MovementMessageRow): Promise<MovementTrayRow[]> {
    return (await tx.movements.trayOf([id])).filter(({ state }) => state === 'open');
  }

  /** The same reason found again although a person sent a text for it. */
  private async refuseUncleared(tx: Tx, entry: MovementTrayRow): Promise<void> {
    const about = await tx.movements.message(entry.messageId);
    if (about?.state !== 'read') return;
    const still = await this.intake.waitsAbout(tx, about);
    if (!still.some((waiting) => keyOf(waiting) === keyOf(entry))) return;
    const reason = `With this text it still says: ${entry.sentence}`;
    throw new Problem('invalid-input', reason, { errors: [{ pointer: '/text', reason }] });
  }

  private async linkTo(tx: Tx, closed: readonly MovementTrayRow[], mendedWith: string): Promise<void> {
    for (const { id, version } of closed) await tx.movements.changeTray(id, version + 1, { mendedWith });
  }

  private async record(
    tx: Tx,
    session: Session,
    what: { entry: MovementTrayRow; message: MovementMessageRow; reason: string; replaced: boolean; now: string },
  ): Promise<void> {
    const { entry, message, reason, replaced, now } = what;
    const aircraft = message.aircraftId === null ? null : await tx.aircraft.get(message.aircraftId);
    await tx.record.append({
      who: session.personId,
      authorisation: null,
      organisation: null,
      what: 'movements.mended',
      aircraft,
      times: { recordedAt: message.receivedAt, enteredAt: now },
      payload: {
        message: message.id,
        sha256: message.sha256,
        waited: entry.reason,
        sentence: entry.sentence,
        reason,
        replaced,
      },
    });
  }
}
