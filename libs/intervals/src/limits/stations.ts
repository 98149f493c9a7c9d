import type { Temporal } from 'temporal-polyfill';
import { minutesBetween } from '../calendar-day.js';
import { sayMinutes } from '../explain-time.js';
import { readInstant } from '../instant.js';
import { writeLimit, type Limit } from '../interval-text.js';
import type { LimitAnswer, PlannedLeg } from '../limit-answer.js';
import type { CountingSettings } from '../settings.js';
import { isAmong } from '../station-use.js';
import type { Used } from '../used.js';

interface Asked {
  limit: Limit;
  flight: PlannedLeg;
  offBlock: Temporal.Instant;
  used: Used;
  settings: CountingSettings;
}

/**
 * "Before the next departure from a designated station": a flight may leave every station but those that the operator
 * designated. What is not known of the station, of the list or of the departures before is `unknown`.
 */
export function askDesignated({ limit, flight, used, settings }: Asked): LimitAnswer {
  const say = sayFor(limit);
  const { designatedDepartures: before } = used;
  if (before !== undefined && before > 0)
    return say('It left a designated station already with this item open.', 'fails');
  const at = isAmong(flight.from, settings.designatedStations);
  if (at === true)
    return say(`${flight.from} is a designated station: it is to be rectified before leaving.`, 'fails');
  if (settings.designatedStations === null) return say('Which stations are designated was never settled.', 'unknown');
  if (at === null) return say('Which station the flight leaves is not known.', 'unknown');
  if (before === undefined) return say('Which stations it left before is not known.', 'unknown');
  return say(`${flight.from} is no designated station.`, 'holds');
}

/**
 * "At the first opportunity at a base": a flight may leave every station but a base where the aircraft stood for as long
 * as the operator settled that an opportunity takes.
 */
export function askOpportunity({ limit, flight, offBlock, used, settings }: Asked): LimitAnswer {
  const say = sayFor(limit);
  const { baseOpportunities: before, station, standsSince } = used;
  if (before !== undefined && before > 0)
    return say('It left a base already after an opportunity there, with this item open.', 'fails');
  const at = isAmong(flight.from, settings.bases);
  if (settings.bases === null) return say('Which stations are bases was never settled.', 'unknown');
  if (at === null) return say('Which station the flight leaves is not known.', 'unknown');
  if (!at) return before === undefined ? unknownBefore(say) : say(`${flight.from} is no base.`, 'holds');
  const needed = settings.opportunityMinutes;
  if (needed === 0) return say(`${flight.from} is a base: it is to be rectified before leaving.`, 'fails');
  if (station !== flight.from || standsSince === undefined)
    return say(`${flight.from} is a base, and how long it stood there is not known.`, 'unknown');
  const stood = minutesBetween(readInstant('used.standsSince', standsSince), offBlock);
  const words = `${flight.from} is a base; standing there ${sayMinutes(stood)}, an opportunity takes ${sayMinutes(needed)}`;
  if (stood >= needed) return say(`${words}: it is to be rectified before leaving.`, 'fails');
  return before === undefined ? unknownBefore(say) : say(`${words}.`, 'holds');
}

type Say = (because: string, answer: LimitAnswer['answer']) => LimitAnswer;

function unknownBefore(say: Say): LimitAnswer {
  return say('Which bases it left before is not known.', 'unknown');
}

function sayFor(limit: Limit): Say {
  return (because, answer) => ({ limit, answer, because: `Until the ${writeLimit(limit)}: ${because}` });
}
