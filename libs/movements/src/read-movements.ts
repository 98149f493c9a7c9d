import { checkHistory } from './check-history.js';
import { countersOf, type MovementCounters } from './counters.js';
import { inForce, type MovementEvent } from './events.js';
import type { FlownLeg } from './flown-leg.js';
import type { MovementMessage, TrayEntry } from './message.js';
import { byFlight, eachOnce, inOrderFlown, withoutDating } from './one-flight.js';
import { readFlight } from './read-flight.js';
import { readChunk } from './read-message.js';
import { settingsWith, type ReadingSettings } from './settings.js';
import { withoutRepeats } from './tray.js';
import { chunksFrom, type Transmission } from './transmissions.js';

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
  const built = inOrderFlown(flights.flatMap(({ legs }) => legs));
  const tray = [...read, ...flights].flatMap((part) => part.tray).concat(checkHistory(built));
  const legs = built.map(({ leg }) => leg);
  return {
    messages: messages.map(withoutDating),
    events: inForce(
      flights.flatMap(({ events }) => events),
      legs,
    ),
    legs,
    counters: countersOf(legs, settings),
    tray: withoutRepeats(tray),
  };
}
