import { minutesBetween } from './calendar-day.js';
import type { RectificationClock } from './clock.js';
import { readInstant, writeInstant } from './instant.js';
import { everyLimit } from './every-limit.js';
import { isStationUnit } from './interval-text.js';
import { hasFlown } from './leg.js';
import { endOfLeg, type ReadLeg } from './read-legs.js';
import type { CountingSettings } from './settings.js';
import type { Used } from './used.js';

type StationUsed = Pick<Used, 'designatedDepartures' | 'baseOpportunities' | 'station' | 'standsSince'>;

/**
 * Departures that used up a limit by station, where the interval asks for it. A departure whose station nobody told, or
 * a list of stations that was never settled, leaves the counter absent: not known.
 *
 * `begun` are all legs in the order flown, `after` those of them since the start.
 */
export function stationUse(
  clock: RectificationClock,
  begun: readonly ReadLeg[],
  after: readonly ReadLeg[],
  settings: CountingSettings,
): StationUsed {
  if (!everyLimit(clock).some(({ unit }) => isStationUnit(unit))) return {};
  const flown = after.filter(({ leg }) => hasFlown(leg));
  const designated = total(flown.map(({ leg }) => isAmong(leg.from, settings.designatedStations)));
  const opportunities = total(
    flown.map((one) => {
      const at = isAmong(one.leg.from, settings.bases);
      return at === true ? stoodLongEnough(one, begun, clock, settings.opportunityMinutes) : at;
    }),
  );
  return {
    ...(designated === null ? {} : { designatedDepartures: designated }),
    ...(opportunities === null ? {} : { baseOpportunities: opportunities }),
    ...placeNow(begun, clock),
  };
}

/** Whether a station is one of a list; null when either is not known. */
export function isAmong(station: string | null | undefined, list: readonly string[] | null): boolean | null {
  return station == null || list === null ? null : list.includes(station);
}

/** Whether it stood there from its arrival, or from the record where that is later, for as long as an opportunity takes. */
function stoodLongEnough(
  departing: ReadLeg,
  begun: readonly ReadLeg[],
  { recordedAt }: RectificationClock,
  needed: number,
): boolean {
  const before = begun[begun.indexOf(departing) - 1];
  const recorded = readInstant('recordedAt', recordedAt);
  const arrived = before === undefined ? recorded : readInstant('leg', endOfLeg(before.leg));
  const from = arrived.epochMilliseconds > recorded.epochMilliseconds ? arrived : recorded;
  return minutesBetween(from, departing.offBlock) >= needed;
}

function placeNow(begun: readonly ReadLeg[], { recordedAt }: RectificationClock): StationUsed {
  const last = begun.at(-1)?.leg;
  if (last?.to == null || (last.landedAt ?? last.onBlockAt) === undefined) return {};
  const arrived = readInstant('leg', endOfLeg(last));
  const recorded = readInstant('recordedAt', recordedAt);
  const since = arrived.epochMilliseconds > recorded.epochMilliseconds ? arrived : recorded;
  return { station: last.to, standsSince: writeInstant(since) };
}

function total(answers: readonly (boolean | null)[]): number | null {
  const sum = answers.filter((one) => one === true).length;
  // One that was is enough to be over, whatever the others were.
  return sum === 0 && answers.includes(null) ? null : sum;
}
