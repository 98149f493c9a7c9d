import type { FlownLeg, ReadMovements, UsageCounters } from '#movements';
import { count, sayInstant, sayMinutes } from './say-time.js';

const ENDINGS: Record<FlownLeg['ending'], string> = {
  arrived: 'arrived',
  returned: 'landed where it left from',
  ramp: 'returned to the ramp, not flown',
  'under-way': 'under way',
};

export function movementsWords({ messages, legs, counters, tray }: ReadMovements, file: string): string {
  return [
    `${file}: ${count(messages.length, 'message')}, ${count(legs.length, 'leg')}.`,
    ...legs.map(legWords),
    ...Object.entries(counters.byRegistration).map(([registration, used]) => `${registration}: ${usedWords(used)}`),
    ...(tray.length === 0 ? [] : ['Not used, for a person to look at:']),
    ...tray.map(({ place, sentence }) => `  line ${place.line}: ${sentence}`),
    ...(tray.some(({ reason }) => reason === 'receipt')
      ? ['Say when they were received: a line `RECEIVED 2026-01-21T11:20Z` before them, or --received.']
      : []),
  ].join('\n');
}

function legWords({ registration, flight, from, to, offBlockAt, ending, missing, ...leg }: FlownLeg): string {
  const way = `${from ?? 'not known'} to ${to ?? 'not known'}`;
  const lack = missing.length === 0 ? '' : `; not known: ${missing.join(', ')}`;
  const long = `${sayMinutes(leg.blockMinutes)} block, ${sayMinutes(leg.flightMinutes)} in the air`;
  return `  ${registration} ${flight} ${way}, off blocks ${sayInstant(offBlockAt)}, ${ENDINGS[ending]}: ${long}${lack}`;
}

function usedWords({ flights, flightDays, blockMinutes, flightMinutes, cycles }: UsageCounters): string {
  const days = `${count(flightDays, 'flight-day')} (UTC)`;
  const time = `${sayMinutes(flightMinutes)} in the air, ${sayMinutes(blockMinutes)} block`;
  return `${count(flights, 'flight')}, ${days}, ${count(cycles, 'cycle')}, ${time}.`;
}
