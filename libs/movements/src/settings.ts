import { Temporal } from 'temporal-polyfill';
import type { DayWindow } from './scheduled-day.js';

/** What may be settled about reading. Minutes are integers. The defaults are ours; none has a published source. */
export interface ReadingSettings extends DayWindow {
  /** Codes that mean the same airline, each with the one to use, such as `{ ZZZ: 'ZZ' }`: aircraft send three letters. */
  airlineCodes: Readonly<Record<string, string>>;
  /** The base whose calendar days make flight-days: UTC or an IANA zone. */
  base: string;
  /** Whether a return to the ramp makes a flight-day. */
  rampReturnMakesFlightDay: boolean;
  /** How far ahead of ours the clock of a sender may be. */
  clockSkewMinutes: number;
  /** A four-digit time this shortly before the receipt is taken for that instant, whatever the scheduled day. */
  promptMinutes: number;
  /** The same for an arrival whose departure is not known. */
  promptArrivalMinutes: number;
  /** Longest time between off-block and take-off, or touch-down and on-block, that is believed. */
  longestTaxiMinutes: number;
}

export const readingSettings: Readonly<ReadingSettings> = {
  daysBack: 2,
  daysAhead: 1,
  airlineCodes: {},
  base: 'UTC',
  rampReturnMakesFlightDay: false,
  clockSkewMinutes: 15,
  promptMinutes: 30,
  promptArrivalMinutes: 720,
  longestTaxiMinutes: 720,
};

/** @throws RangeError naming a setting that cannot be */
export function settingsWith(own: Partial<ReadingSettings>): ReadingSettings {
  const settings = { ...readingSettings, ...own };
  for (const [name, value] of Object.entries(settings)) {
    if (typeof value === 'number' && !(Number.isSafeInteger(value) && value >= 0)) {
      throw new RangeError(`${name} ${value} is not a whole number from 0 up.`);
    }
  }
  if (settings.daysBack + settings.daysAhead > 26) {
    throw new RangeError(
      `A window of ${settings.daysBack} days back and ${settings.daysAhead} ahead holds a day twice.`,
    );
  }
  if (!isZone(settings.base))
    throw new RangeError(`The base ${JSON.stringify(settings.base)} is neither UTC nor a zone.`);
  return settings;
}

function isZone(base: string): boolean {
  try {
    return Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(base) !== undefined;
  } catch {
    return false;
  }
}
