import { checkHistory } from './check-history.js';
import { countersOf, type MovementCounters } from './counters.js';
import { inForce, type MovementEvent } from './events.js';
import type { FlownLeg } from './flown-leg.js';
import type { MovementMessage, TrayEntry } from './message.js';
import { readFlight } from './read-flight.js';
import type { DatedMessage } from './dated-message.js';
import { readChunk } from './read-message.js';
import { readReceipt } from './receipt.js';
import { settingsWith, type ReadingSettings } from './settings.js';
import { byArrival } from './statements.js';
import { quoted, withoutRepeats } from './tray.js';
import { chunksOf, type Chunk, type Transmission } from './transmissions.js';

export interface ReadOptions extends Partial<ReadingSettings> {
  /** When the text was received: ISO 8601 with Z or an offset. A line `RECEIVED <instant>` in the text goes before it. */
  receivedAt?: string;
}

export interface ReadMovements {
  /** Each message once, however often it came, in the order of receipt. */
  messages: MovementMessage[];
  /** In the order of their instants. */
  events: MovementEvent[];
  /** By aircraft, in the order flown. */
  legs: FlownLeg[];
  counters: MovementCounters;
  tray: TrayEntry[];
}

/**
 * Reads movement messages out of one text, or out of several with their receipts, and works out what was flown.
 *
 * The answer depends on what was received and when, not on the order or number of deliveries, so that it can be worked
 * out anew whenever a message comes in late, twice, or with COR. Nothing in a text makes it throw: what cannot be used
 * is in the tray.
 * @throws RangeError for a receipt or a setting that cannot be, which is a mistake of the caller
 */
export function readMovements(input: string | readonly Transmission[], options: ReadOptions = {}): ReadMovements {
  const { receivedAt, ...own } = options;
  const settings = settingsWith(own);
  const chunks = typeof input === 'string' ? chunksFrom([{ text: input, receivedAt }]) : chunksFrom(input);
  const read = chunks.map((chunk) => readChunk(chunk, settings));
  const messages = eachOnce(read.flatMap(({ message }) => message ?? []));
  const flights = byFlight(messages).map((flight) => readFlight(flight, settings));
  const built = flights
    .flatMap(({ legs }) => legs)
    .sort((one, other) => (keyOf(one.leg) < keyOf(other.leg) ? -1 : 1));
  const tray = [...read, ...flights].flatMap((part) => part.tray).concat(checkHistory(built));
  const legs = built.map(({ leg }) => leg);
  return {
    messages: messages.map(({ receipt: _receipt, scheduledDay: _day, ...message }) => message),
    events: inForce(
      flights.flatMap(({ events }) => events),
      legs,
    ),
    legs,
    counters: countersOf(legs, settings),
    tray: withoutRepeats(tray),
  };
}

function chunksFrom(transmissions: readonly { text: string; receivedAt?: string }[]): Chunk[] {
  return transmissions.flatMap(({ text, receivedAt }, index) => {
    const receipt = receivedAt === undefined ? null : readReceipt(receivedAt);
    if (receivedAt !== undefined && !receipt) {
      throw new RangeError(`The receipt ${quoted(String(receivedAt))} is no instant such as 2026-01-21T11:20:00Z.`);
    }
    return chunksOf(text, receipt, index + 1);
  });
}

/** A second delivery changes nothing: the same text about the same day counts from its first receipt. */
function eachOnce(messages: readonly DatedMessage[]): DatedMessage[] {
  const once = new Map<string, DatedMessage>();
  for (const message of [...messages].sort((one, other) => byArrival({ message: one }, { message: other }))) {
    const key = `${message.scheduledOn} ${message.text}`;
    if (!once.has(key)) once.set(key, message);
  }
  return [...once.values()];
}

function byFlight(messages: readonly DatedMessage[]): DatedMessage[][] {
  const flights = new Map<string, DatedMessage[]>();
  for (const message of messages) {
    const key = `${message.flight} ${message.scheduledOn}`;
    const flight = flights.get(key);
    if (flight) flight.push(message);
    else flights.set(key, [message]);
  }
  return [...flights.values()];
}

function keyOf({ registration, offBlockAt, flight, sequence }: FlownLeg): string {
  return `${registration} ${offBlockAt} ${flight} ${String(sequence).padStart(4, '0')}`;
}
