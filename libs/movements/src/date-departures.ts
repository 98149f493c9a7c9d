import { Dating, Undatable } from './dating.js';
import type { DatedMessage } from './dated-message.js';
import type { ReadingSettings } from './settings.js';
import { destinationOf, elementOf, pairOf, type Departure } from './statements.js';
import { firstAtOrAfter } from './utc-minute.js';

/**
 * Gives the departures of one flight their instants. Most stand by themselves; one that was neither sent promptly nor
 * with its day is put after the departure that it must follow, so that a flight over midnight keeps its order.
 */
export class DepartureDating {
  private readonly dated = new Map<DatedMessage, Departure | null>();

  constructor(
    private readonly messages: readonly DatedMessage[],
    private readonly settings: ReadingSettings,
  ) {}

  /** @throws Undatable */
  of(message: DatedMessage): Departure | null {
    const known = this.dated.get(message);
    if (known !== undefined) return known;
    this.dated.set(message, null);
    const departure = this.date(message);
    this.dated.set(message, departure);
    return departure;
  }

  private date(message: DatedMessage): Departure | null {
    const times = pairOf(message, 'AD');
    const first = times?.first ?? times?.second;
    if (!times || !first) return null;
    const dating = new Dating(message, this.settings);
    const taxi = this.settings.longestTaxiMinutes;
    const last = elementOf(message, 'RR')?.time ?? times.second ?? first;
    const start = dating.promptStart(first, last) ?? this.afterOthers(message, first.minutes) ?? dating.first(first);
    const airborne = times.first && times.second ? dating.following(times.second, start, taxi) : null;
    const back = elementOf(message, 'RR');
    if (back && (times.second !== null || times.first === null))
      throw new Undatable('conflict', 'Airborne and back on the ramp exclude each other.');
    return {
      message,
      start,
      offBlock: times.first ? start : null,
      airborne: times.first ? airborne : start,
      rampReturn: back ? dating.following(back.time, start, taxi) : null,
    };
  }

  private afterOthers(message: DatedMessage, clock: number): number | null {
    const first = pairOf(message, 'AD')?.first ?? pairOf(message, 'AD')?.second;
    if (first?.day !== null) return null;
    const before = this.messages
      .filter((other) => this.mustPrecede(other, message))
      .map((other) => this.quietly(other));
    const floor = Math.max(...before.map((departure) => departure?.rampReturn ?? departure?.start ?? -Infinity));
    const at = firstAtOrAfter(clock, floor);
    return Number.isFinite(floor) && at <= message.receipt.minute + this.settings.clockSkewMinutes ? at : null;
  }

  /** A leg to this station, or a return to the ramp of this station before the aircraft got away. */
  private mustPrecede(other: DatedMessage, message: DatedMessage): boolean {
    if (other === message || pairOf(other, 'AD') === null || other.registration !== message.registration)
      return false;
    if (other.station !== message.station) return destinationOf(other) === message.station;
    const returned = this.messages.some(({ elements }) => elements.some(({ kind }) => kind === 'FR'));
    return !returned && !other.correction && !message.correction && hasRampReturn(other) && !hasRampReturn(message);
  }

  private quietly(message: DatedMessage): Departure | null {
    try {
      return this.of(message);
    } catch {
      return null;
    }
  }
}

function hasRampReturn(message: DatedMessage): boolean {
  return elementOf(message, 'RR') !== null;
}
