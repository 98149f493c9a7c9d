import { In } from 'typeorm';
import { newId } from '../ids.js';
import type { Fresh } from '../rows/fresh.js';
import { MovementFileTable, type MovementFileRow } from '../rows/movement-file.row.js';
import {
  MovementDeliveryTable,
  MovementMessageTable,
  MovementTrayTable,
  type MovementDeliveryRow,
  type MovementMessageRow,
  type MovementTrayRow,
} from '../rows/movement.row.js';
import type { Transaction } from '../transaction.js';

/** What one flight of one scheduled day is known by. */
export interface FlightOfDay {
  flight: string;
  scheduledOn: string;
}

/** A tray entry with the message it is about, and how that came. */
export interface TrayItem {
  entry: MovementTrayRow;
  message: MovementMessageRow;
  delivery: Pick<MovementDeliveryRow, 'cameBy' | 'sentBy'>;
}

/** Movement messages of one operator and what of them waits for a person. */
export class Movements {
  constructor(private readonly tx: Transaction) {}

  /**
   * Takes the intake of this operator for the rest of the transaction: one delivery at a time, on however many servers.
   * A message may move a leg from one aircraft to another and change the leg before it, so which aircraft to hold is
   * known only after reading. Take it before any aircraft.
   */
  async takeIntake(): Promise<void> {
    const name = JSON.stringify(['movements', this.tx.operatorId]);
    await this.tx.query('select pg_advisory_xact_lock(hashtextextended($1, 0))', [name]);
  }

  /** The file of the same content that came before, whatever it was called; null when none did. */
  fileOf(sha256: string): Promise<MovementFileRow | null> {
    return this.tx.manager.findOneBy(MovementFileTable, { operatorId: this.tx.operatorId, sha256 });
  }

  addFile(file: Fresh<MovementFileRow>): Promise<string> {
    return this.tx.insert(MovementFileTable, file);
  }

  addDelivery(delivery: Fresh<MovementDeliveryRow>): Promise<string> {
    return this.tx.insert(MovementDeliveryTable, delivery);
  }

  delivery(id: string): Promise<MovementDeliveryRow | null> {
    return this.tx.manager.findOneBy(MovementDeliveryTable, { operatorId: this.tx.operatorId, id });
  }

  /** @returns the rows as they now stand */
  async addMessages(messages: readonly Fresh<MovementMessageRow>[]): Promise<MovementMessageRow[]> {
    const { operatorId, manager } = this.tx;
    if (messages.length === 0) return [];
    const none = { flight: null, scheduledOn: null, registration: null, aircraftId: null, mends: null };
    const rows = messages.map((one): MovementMessageRow => ({
      ...none,
      id: newId(),
      version: 1,
      ...one,
      operatorId,
    }));
    await manager.insert(MovementMessageTable, rows);
    return rows;
  }

  message(id: string): Promise<MovementMessageRow | null> {
    return this.tx.manager.findOneBy(MovementMessageTable, { operatorId: this.tx.operatorId, id });
  }

  /** Messages with one of these texts, by hash, whatever became of them. */
  withTexts(hashes: readonly string[]): Promise<MovementMessageRow[]> {
    return this.select({ sha256: In([...new Set(hashes)]) });
  }

  /** The messages in use about these flights. */
  async ofFlights(flights: readonly FlightOfDay[]): Promise<MovementMessageRow[]> {
    if (flights.length === 0) return [];
    const { operatorId, manager } = this.tx;
    return manager
      .createQueryBuilder(MovementMessageTable, 'message')
      .where("message.operator_id = :operatorId and message.state = 'read'", { operatorId })
      .andWhere('(message.flight, message.scheduled_on) in (select * from unnest(:names::text[], :days::date[]))', {
        names: flights.map(({ flight }) => flight),
        days: flights.map(({ scheduledOn }) => scheduledOn),
      })
      .orderBy({ 'message.receivedAt': 'ASC', 'message.id': 'ASC' })
      .getMany();
  }

  /** @throws StaleVersion */
  changeMessage(id: string, seen: number, changes: Partial<MovementMessageRow>): Promise<void> {
    return this.tx.change(MovementMessageTable, id, seen, changes);
  }

  async openTray(entries: readonly Fresh<MovementTrayRow, 'state'>[]): Promise<MovementTrayRow[]> {
    const { operatorId, manager } = this.tx;
    if (entries.length === 0) return [];
    const none = { closedAt: null, closedBy: null, why: null, mendedWith: null };
    const rows = entries.map((one): MovementTrayRow => ({
      ...none,
      id: newId(),
      version: 1,
      state: 'open',
      ...one,
      operatorId,
    }));
    await manager.insert(MovementTrayTable, rows);
    this.tx.wrote(MovementTrayTable, ...rows.map(({ id }) => id));
    return rows;
  }

  /** Every entry about these messages, closed or not. */
  trayOf(messageIds: readonly string[]): Promise<MovementTrayRow[]> {
    const { operatorId, manager } = this.tx;
    return manager.findBy(MovementTrayTable, { operatorId, messageId: In([...messageIds]) });
  }

  trayEntry(id: string): Promise<MovementTrayRow | null> {
    return this.tx.manager.findOneBy(MovementTrayTable, { operatorId: this.tx.operatorId, id });
  }

  /** @throws StaleVersion */
  changeTray(id: string, seen: number, changes: Partial<MovementTrayRow>): Promise<void> {
    return this.tx.change(MovementTrayTable, id, seen, changes);
  }

  /** The oldest first; of one delivery in the order of its text. */
  async tray(state: MovementTrayRow['state'], limit: number): Promise<TrayItem[]> {
    const { operatorId, manager } = this.tx;
    const entries = await manager.find(MovementTrayTable, {
      where: { operatorId, state },
      order: { openedAt: 'ASC', id: 'ASC' },
      take: limit,
    });
    return (await this.withMessages(entries)).sort(inOrder);
  }

  async withMessages(entries: readonly MovementTrayRow[]): Promise<TrayItem[]> {
    if (entries.length === 0) return [];
    const { operatorId, manager } = this.tx;
    const messages = await this.select({ id: In(entries.map(({ messageId }) => messageId)) });
    const deliveries = await manager.find(MovementDeliveryTable, {
      select: { operatorId: true, id: true, cameBy: true, sentBy: true },
      where: { operatorId, id: In(messages.map(({ deliveryId }) => deliveryId)) },
    });
    return entries.map((entry) => {
      const message = messages.find(({ id }) => id === entry.messageId);
      const delivery = deliveries.find(({ id }) => id === message?.deliveryId);
      if (!message || !delivery) throw new Error(`Tray entry ${entry.id} is about no message.`);
      return { entry, message, delivery };
    });
  }

  private select(where: object): Promise<MovementMessageRow[]> {
    return this.tx.manager.find(MovementMessageTable, {
      where: { ...where, operatorId: this.tx.operatorId },
      order: { receivedAt: 'ASC', id: 'ASC' },
    });
  }
}

function inOrder(one: TrayItem, other: TrayItem): number {
  return (
    one.entry.openedAt.localeCompare(other.entry.openedAt) ||
    one.message.deliveryId.localeCompare(other.message.deliveryId) ||
    one.message.line - other.message.line ||
    one.entry.id.localeCompare(other.entry.id)
  );
}
