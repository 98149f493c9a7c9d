import type { TimeGroup } from './elements/element.js';
import type { TrayReason } from './message.js';
import type { DatedMessage } from './dated-message.js';
import { dayNear } from './scheduled-day.js';
import type { ReadingSettings } from './settings.js';
import { quoted } from './quoted.js';
import { firstAtOrAfter, lastAtOrBefore, minutesPerDay, writeDay, writeMinute } from './utc-minute.js';

/** Why the times of a message could not be given their day; caught per message, and put into the tray. */
export class Undatable extends Error {
  constructor(
    readonly reason: TrayReason,
    sentence: string,
  ) {
    super(sentence);
  }
}

/**
 * Gives the four- and six-digit groups of one message their instants. A message tells the scheduled day of its flight
 * and the minute of the clock, so what the day of a movement is follows from, in this order: the group itself, an
 * earlier movement of the same leg, a prompt receipt, the scheduled day of the leg. A movement never lies after its
 * receipt, and a group with a day is held against the same order instead of trusted.
 */
export class Dating {
  /** The scheduled day of this leg: FLD if sent, since the day of the flight is that of its first leg. */
  private readonly legDay: number;
  private readonly ceiling: number;

  constructor(
    private readonly message: DatedMessage,
    private readonly settings: ReadingSettings,
  ) {
    const sent = message.elements.find((element) => element.kind === 'FLD');
    this.legDay = sent?.kind === 'FLD' ? this.dayOf(sent.day) : message.scheduledDay;
    this.ceiling = message.receipt.minute + settings.clockSkewMinutes;
  }

  /** The instant shortly before the receipt, or null when the group has a day or was not sent promptly. */
  prompt({ day, minutes }: TimeGroup, within = this.settings.promptMinutes): number | null {
    const latest = lastAtOrBefore(minutes, this.ceiling);
    const near = latest >= this.earliest && latest < (this.message.scheduledDay + 3) * minutesPerDay;
    return day === null && near && this.ceiling - latest <= within + this.settings.clockSkewMinutes ? latest : null;
  }

  /**
   * The first of two times by the promptness of the last: a report leaves when the last of them is known, and a taxi
   * may be long.
   */
  promptStart(first: TimeGroup, last: TimeGroup): number | null {
    const end = this.prompt(last);
    if (first.day !== null || end === null) return null;
    const start = lastAtOrBefore(first.minutes, end);
    return end - start <= this.settings.longestTaxiMinutes ? start : null;
  }

  /** An instant before which nothing of the leg is known. */
  first(group: TimeGroup, within?: number): number {
    const prompt = this.prompt(group, within);
    if (prompt !== null) return prompt;
    if (group.day !== null) return this.past(group, this.exact(group));
    const onDay = this.legDay * minutesPerDay + group.minutes;
    const early = onDay - minutesPerDay;
    return onDay > this.ceiling && early >= this.earliest ? early : this.past(group, onDay);
  }

  /** The first instant not before `floor`; refused when that is further away than `within` minutes, or not yet past. */
  following(group: TimeGroup, floor: number, within: number): number {
    const at = group.day === null ? firstAtOrAfter(group.minutes, floor) : this.exact(group);
    if (at < floor || at > floor + within) {
      const away = at < floor ? 'lies before' : `lies more than ${within} minutes after`;
      throw this.undatable('order', group, `${away} ${writeMinute(floor)}`);
    }
    return this.past(group, at);
  }

  /** An instant still to come, for what is only expected: not before `floor`, or round the receipt. */
  expected(group: TimeGroup, floor: number | null): number {
    if (group.day !== null) return this.exact(group);
    return firstAtOrAfter(group.minutes, floor ?? this.message.receipt.minute - minutesPerDay / 4);
  }

  /** Half a day before the scheduled day of the leg: no flight leaves earlier than that. */
  private get earliest(): number {
    return (this.legDay - 0.5) * minutesPerDay;
  }

  private exact(group: TimeGroup): number {
    return this.dayOf(group.day as number) * minutesPerDay + group.minutes;
  }

  private dayOf(day: number): number {
    const { scheduledDay, scheduledOn } = this.message;
    const found = dayNear(day, scheduledDay);
    if (found === null)
      throw new Undatable('day', `The day ${day} is not near ${scheduledOn}, the day of the flight.`);
    return found;
  }

  private past(group: TimeGroup, at: number): number {
    if (at > this.ceiling) {
      const received = `its message was received at ${this.message.receivedAt}`;
      throw this.undatable('future', group, `would be ${writeMinute(at)}, but ${received}`);
    }
    return at;
  }

  private undatable(reason: TrayReason, { day, minutes }: TimeGroup, because: string): Undatable {
    const two = (number: number) => String(number).padStart(2, '0');
    const sent = `${day === null ? '' : two(day)}${two(Math.floor(minutes / 60))}${two(minutes % 60)}`;
    const { flight, station, scheduledDay } = this.message;
    const where = quoted(`${flight}/${writeDay(scheduledDay)} ${station}`);
    return new Undatable(reason, `The time ${sent} of ${where} ${because}.`);
  }
}
