import { checkHistory } from './check-history.js';
import type { BuiltLeg } from './compose-leg.js';
import type { DatedMessage } from './dated-message.js';
import { inForce, type MovementEvent } from './events.js';
import type { FlownLeg } from './flown-leg.js';
import type { MovementMessage, TrayEntry } from './message.js';
import { byFlight, eachOnce, inOrderFlown, withoutDating } from './one-flight.js';
import { readFlight } from './read-flight.js';
import { readChunk } from './read-message.js';
import { readReceipt } from './receipt.js';
import { settingsWith, type ReadingSettings } from './settings.js';
import { trayKey } from './tray.js';
import { chunksFrom, type Transmission } from './transmissions.js';
import { minutesPerDay } from './utc-minute.js';

/** What has become final since the part before. */
export interface MovementsPart {
  messages: MovementMessage[];
  events: MovementEvent[];
  legs: FlownLeg[];
  tray: TrayEntry[];
}

/** A leg may begin so much before the scheduled day of its flight: FLD names the day before, and a flight leaves early. */
const EARLIEST_START = 1.5;

/**
 * Reads any number of transmissions in the order of their receipt, and gives legs as soon as nothing that may still come
 * can change them; only what is not final is in memory. All parts together say what `readMovements` says of the whole,
 * but that text which is no message and comes again after days is told again.
 *
 * @throws RangeError for a receipt so far behind the others that its flight was final already, and as readMovements does
 */
export function* readMovementsInParts(
  transmissions: Iterable<Transmission>,
  options: Partial<ReadingSettings> = {},
): Generator<MovementsPart, void> {
  const reading = new ReadingInParts(settingsWith(options));
  let count = 0;
  for (const transmission of transmissions) {
    count += 1;
    const part = reading.take(transmission, count);
    if (part !== null) yield part;
  }
  yield reading.rest();
}

class ReadingInParts {
  private readonly open = new Map<number, DatedMessage[]>();
  private tray: TrayEntry[] = [];
  private readonly told = new Map<string, number>();
  private waiting: BuiltLeg[] = [];
  /** Flights of this day and before are final. */
  private closed = -Infinity;

  constructor(private readonly settings: ReadingSettings) {}

  /** @param place which transmission it is, from 1 */
  take(transmission: Transmission, place: number): MovementsPart | null {
    let newest = this.closed;
    for (const chunk of chunksFrom([transmission], place)) {
      const { message, tray } = readChunk(chunk, this.settings);
      const minute = chunk.receipt?.minute ?? null;
      if (minute !== null) newest = Math.max(newest, Math.floor(minute / minutesPerDay) - this.settings.daysBack - 1);
      this.lay(tray, newest);
      if (message !== null) this.keep(message);
    }
    return newest > this.closed ? this.close(newest) : null;
  }

  rest(): MovementsPart {
    return this.close(Infinity);
  }

  private keep(message: DatedMessage): void {
    const { scheduledDay, receivedAt } = message;
    if (scheduledDay <= this.closed) {
      throw new RangeError(`The receipt ${receivedAt} is days behind one before it; the flight is final already.`);
    }
    const ofDay = this.open.get(scheduledDay);
    if (ofDay) ofDay.push(message);
    else this.open.set(scheduledDay, [message]);
  }

  private lay(entries: readonly TrayEntry[], day: number): void {
    for (const entry of entries) {
      const key = trayKey(entry);
      if (!this.told.has(key)) this.tray.push(entry);
      this.told.set(key, day);
    }
  }

  /** Reads the flights that no message can be about any more. */
  private close(through: number): MovementsPart {
    const days = [...this.open.keys()].filter((day) => day <= through).sort((one, other) => one - other);
    const messages = eachOnce(days.flatMap((day) => this.open.get(day) ?? []));
    for (const day of days) this.open.delete(day);
    const flights = byFlight(messages).map((flight) => readFlight(flight, this.settings));
    const built = flights.flatMap(({ legs }) => legs);
    for (const { tray } of flights) this.lay(tray, through);
    const events = inForce(
      flights.flatMap((flight) => flight.events),
      built.map(({ leg }) => leg),
    );
    this.waiting.push(...built);
    const legs = this.final(through);
    const { tray } = this;
    this.tray = [];
    for (const [key, day] of this.told) if (day < this.closed) this.told.delete(key);
    this.closed = through;
    return { messages: messages.map(withoutDating), events, legs, tray };
  }

  /** The legs that no later one can come before, but the last of each aircraft, which the next one is held against. */
  private final(through: number): FlownLeg[] {
    const bound = (through + 1 - EARLIEST_START) * minutesPerDay;
    const known = inOrderFlown(this.waiting.filter(({ leg }) => minuteOf(leg) < bound));
    this.lay(checkHistory(known), through);
    const isLast = ({ leg }: BuiltLeg, index: number) => known[index + 1]?.leg.registration !== leg.registration;
    const held = through === Infinity ? [] : known.filter(isLast);
    const given = new Set(known);
    for (const one of held) given.delete(one);
    this.waiting = this.waiting.filter((one) => !given.has(one));
    return [...given].map(({ leg }) => leg);
  }
}

function minuteOf({ offBlockAt }: FlownLeg): number {
  const receipt = readReceipt(offBlockAt);
  if (receipt === null) throw new Error(`A leg leaves at ${offBlockAt}, which is no instant.`);
  return receipt.minute;
}
