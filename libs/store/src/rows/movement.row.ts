import { EntitySchema } from 'typeorm';
import { day, id, instant, key, nullable, text, version, whole } from './column.js';
import { toMember, within } from './foreign-key.js';

/** A text as it came in, whole and to the letter: one movement message or many. Never changed. */
export interface MovementDeliveryRow {
  operatorId: string;
  id: string;
  text: string;
  /** Of the text, as 64 hex digits. */
  sha256: string;
  /** As plain text, as JSON, out of a watched folder, or sent by a person to mend what was in the tray. */
  cameBy: 'text' | 'json' | 'mended' | 'file';
  sentBy: string | null;
  receivedAt: string;
  enteredAt: string;
  entryId: string;
}

export const MovementDeliveryTable = new EntitySchema<MovementDeliveryRow>({
  name: 'movement_delivery',
  columns: {
    operatorId: key(),
    id: key(),
    text: text(),
    sha256: text(),
    cameBy: text(),
    sentBy: id(nullable),
    receivedAt: instant(),
    enteredAt: instant(),
    entryId: id(),
  },
  checks: [
    { name: 'movement_delivery_sha256', expression: "sha256 ~ '^[0-9a-f]{64}$'" },
    { name: 'movement_delivery_came_by', expression: "came_by in ('text', 'json', 'mended', 'file')" },
  ],
  foreignKeys: [
    toMember('movement_delivery_sent_by', 'sentBy'),
    within('movement_delivery_entry', 'record_entry', 'entryId'),
  ],
});

/**
 * One message of a delivery. It is read, or waits in the tray; once a person has sent another text in its place it is
 * mended and counts no more. Its text never changes. The same text about the same day is one message, however often it
 * comes.
 */
export interface MovementMessageRow {
  operatorId: string;
  id: string;
  deliveryId: string;
  /** Where it begins in the delivery, from 1. */
  line: number;
  text: string;
  /** Of the text, as 64 hex digits. */
  sha256: string;
  /** The first receipt, when it came more than once. */
  receivedAt: string;
  enteredAt: string;
  /** These three are null where they could not be read. */
  flight: string | null;
  scheduledOn: string | null;
  registration: string | null;
  /** Null when no aircraft of the operator has this registration. */
  aircraftId: string | null;
  state: 'read' | 'tray' | 'mended';
  /** The message in whose place a person sent this one. */
  mends: string | null;
  version: number;
}

export const MovementMessageTable = new EntitySchema<MovementMessageRow>({
  name: 'movement_message',
  columns: {
    operatorId: key(),
    id: key(),
    deliveryId: id(),
    line: whole(),
    text: text(),
    sha256: text(),
    receivedAt: instant(),
    enteredAt: instant(),
    flight: text(nullable),
    scheduledOn: day(nullable),
    registration: text(nullable),
    aircraftId: id(nullable),
    state: text(),
    mends: id(nullable),
    version: version(),
  },
  indices: [
    { name: 'movement_message_of_flight', columns: ['operatorId', 'flight', 'scheduledOn'] },
    { name: 'movement_message_by_text', columns: ['operatorId', 'sha256'] },
  ],
  checks: [
    { name: 'movement_message_sha256', expression: "sha256 ~ '^[0-9a-f]{64}$'" },
    { name: 'movement_message_state', expression: "state in ('read', 'tray', 'mended')" },
  ],
  foreignKeys: [
    within('movement_message_delivery', 'movement_delivery', 'deliveryId'),
    within('movement_message_aircraft', 'aircraft', 'aircraftId'),
    within('movement_message_mends', 'movement_message', 'mends'),
  ],
});

/**
 * Something about a message that a person should look at. It is opened when the message is read, settled by the program
 * when a later message clears it up, or mended by a person, with or without another text.
 */
export interface MovementTrayRow {
  operatorId: string;
  id: string;
  messageId: string;
  reason: string;
  sentence: string;
  openedAt: string;
  state: 'open' | 'settled' | 'mended';
  closedAt: string | null;
  closedBy: string | null;
  /** The reason that the person gave. */
  why: string | null;
  /** The delivery with the corrected text. */
  mendedWith: string | null;
  version: number;
}

export const MovementTrayTable = new EntitySchema<MovementTrayRow>({
  name: 'movement_tray',
  columns: {
    operatorId: key(),
    id: key(),
    messageId: id(),
    reason: text(),
    sentence: text(),
    openedAt: instant(),
    state: text(),
    closedAt: instant(nullable),
    closedBy: id(nullable),
    why: text(nullable),
    mendedWith: id(nullable),
    version: version(),
  },
  indices: [
    { name: 'movement_tray_by_state', columns: ['operatorId', 'state', 'openedAt'] },
    { name: 'movement_tray_of_message', columns: ['operatorId', 'messageId'] },
  ],
  checks: [{ name: 'movement_tray_state', expression: "state in ('open', 'settled', 'mended')" }],
  foreignKeys: [
    within('movement_tray_message', 'movement_message', 'messageId'),
    toMember('movement_tray_closed_by', 'closedBy'),
    within('movement_tray_mended_with', 'movement_delivery', 'mendedWith'),
  ],
});
