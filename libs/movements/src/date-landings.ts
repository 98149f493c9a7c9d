import { Dating } from './dating.js';
import type { TimeGroup } from './elements/element.js';
import type { DatedMessage } from './dated-message.js';
import type { ReadingSettings } from './settings.js';
import { elementOf, pairOf, type Departure, type Landing, type RampReturn } from './statements.js';
import { firstAtOrAfter, minutesPerDay } from './utc-minute.js';

/**
 * The instants of AA or FR: the first after a departure that can have led there, or by themselves where there is none.
 * @throws Undatable
 */
export function dateLanding(
  message: DatedMessage,
  kind: 'AA' | 'FR',
  departures: readonly Departure[],
  settings: ReadingSettings,
): Landing | null {
  const times = pairOf(message, kind);
  const first = times?.first ?? times?.second;
  if (!times || !first) return null;
  const dating = new Dating(message, settings);
  const prompt = dating.promptStart(first, times.second ?? first);
  const end = dateAfterDeparture(
    { group: first, prompt, dating, message },
    leadingTo(message, kind, departures),
    settings,
  );
  const taxi = settings.longestTaxiMinutes;
  const onBlock = times.first && times.second ? dating.following(times.second, end, taxi) : null;
  return { message, end, touchDown: times.first ? end : null, onBlock: times.first ? onBlock : end };
}

/** The instant of an RR sent by itself. @throws Undatable */
export function dateRampReturn(
  message: DatedMessage,
  departures: readonly Departure[],
  settings: ReadingSettings,
): RampReturn | null {
  const back = elementOf(message, 'RR');
  if (!back || pairOf(message, 'AD')) return null;
  const dating = new Dating(message, settings);
  const toDate = { group: back.time, prompt: dating.prompt(back.time), dating, message };
  return { message, end: dateAfterDeparture(toDate, leadingTo(message, 'FR', departures), settings) };
}

/** Departures of the same aircraft that did not end on the ramp: from the same station for a return. */
function leadingTo(message: DatedMessage, kind: 'AA' | 'FR', departures: readonly Departure[]): Departure[] {
  return departures.filter(({ message: departed, rampReturn }) => {
    const same = departed.registration === message.registration && rampReturn === null;
    return same && (kind === 'AA' || departed.station === message.station);
  });
}

interface ToDate {
  group: TimeGroup;
  prompt: number | null;
  dating: Dating;
  message: DatedMessage;
}

function dateAfterDeparture(
  { group, prompt, dating, message }: ToDate,
  departures: readonly Departure[],
  settings: ReadingSettings,
): number {
  if (group.day !== null) return dating.first(group);
  const ceiling = message.receipt.minute + settings.clockSkewMinutes;
  const possible = departures
    .map(({ airborne, start }) => airborne ?? start)
    .map((left) => ({ left, at: firstAtOrAfter(group.minutes, left + 1) }))
    .filter(({ left, at }) => at - left < minutesPerDay && at <= ceiling)
    .map(({ at }) => at);
  if (possible.length === 0) return dating.first(group, settings.promptArrivalMinutes);
  return prompt !== null && possible.includes(prompt) ? prompt : Math.min(...possible);
}
