import { minutesBetween } from './calendar-day.js';
import type { RectificationClock } from './clock.js';
import { countUsed } from './count-used.js';
import { sayMinutes } from './explain-time.js';
import { readInstant, writeInstant } from './instant.js';
import type { IntervalUnit } from './interval-text.js';
import type { Leg } from './leg.js';
import type { LimitLeft } from './limit-left.js';
import { readLegs } from './read-legs.js';
import type { CountingSettings } from './settings.js';

const DAY = 24 * 60;
const MOST_DAYS = 30;

/** What an aircraft used on the mean over the last days. */
export interface MeanUse {
  /** Over how many days it was taken: 30, or fewer where the first leg is younger; at least one. */
  days: number;
  words: string;
  /** Whole minutes on the clock until so much more is used; null where nothing of the kind was. */
  minutesFor(countedIn: LimitLeft['countedIn'], unit: IntervalUnit, left: number): number | null;
}

/**
 * The mean use of the legs that left in the 30 days before `at`. Whole numbers throughout: the end is found by one
 * division at the last step. Null where there was no leg.
 */
export function meanUse(
  clock: RectificationClock,
  legs: readonly Leg[],
  at: string,
  settings: CountingSettings,
): MeanUse | null {
  const now = readInstant('at', at);
  const since = now.subtract({ hours: MOST_DAYS * 24 });
  const recent = readLegs(legs).filter(
    ({ offBlock }) => minutesBetween(since, offBlock) >= 0 && minutesBetween(offBlock, now) >= 0,
  );
  const [first] = recent;
  if (first === undefined) return null;
  const days = Math.max(1, Math.ceil(minutesBetween(first.offBlock, now) / DAY));
  const from = now.subtract({ hours: days * 24 });
  // Counted as an interval that began then, with every leg of these days after its start and no day excluded.
  const span = spanOf(clock, writeInstant(from));
  const used = countUsed(
    span,
    recent.map(({ leg }) => leg),
    settings,
  );
  const hours = settings.hourClock === 'block' ? used.blockMinutes : used.flightMinutes;
  const usedOf = (countedIn: LimitLeft['countedIn'], unit: IntervalUnit): number | undefined => {
    if (countedIn === 'minutes') return unit === 'engine-hours' ? used.engineMinutes : hours;
    if (countedIn === 'flight-days') return used.flightDays;
    if (countedIn === 'engine-cycles') return used.engineCycles;
    return countedIn === 'flights' || countedIn === 'cycles' ? used[countedIn] : undefined;
  };
  return {
    days,
    words: `${used.flights} flights, ${used.flightDays} flight-days, ${sayMinutes(hours)}`,
    minutesFor(countedIn, unit, left) {
      const some = usedOf(countedIn, unit);
      return some === undefined || some === 0 ? null : Math.floor((left * days * DAY) / some);
    },
  };
}

function spanOf(clock: RectificationClock, from: string): RectificationClock {
  const dayBefore = readInstant('from', from).subtract({ hours: 36 }).toZonedDateTimeISO(clock.base).toPlainDate();
  const span = { ...clock, recordedAt: from, dayOfDiscovery: dayBefore.toString() };
  if (span.kind === 'calendar') return span;
  const { usedBefore: _, ...counted } = span;
  return { ...counted, startsAt: from };
}
