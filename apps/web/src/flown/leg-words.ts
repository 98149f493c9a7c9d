import type { Schemas } from '../api/client.js';
import { dayText, wallIn } from '../words/time.js';

type Leg = Schemas['LegLine'];

const ENDINGS: Record<Leg['ending'], string> = {
  arrived: 'Arrived',
  returned: 'Landed back where it left from',
  ramp: 'Back on the ramp, not flown',
  'under-way': 'Under way',
  withdrawn: 'Withdrawn: it was no leg',
};

export const endingWords = (ending: Leg['ending']): string => ENDINGS[ending];

const MISSING: Record<string, string> = {
  'off-block': 'off blocks',
  airborne: 'airborne',
  'touch-down': 'touch-down',
  'on-block': 'on blocks',
};

export const missingWords = (missing: readonly string[]): string =>
  missing.map((time) => MISSING[time] ?? time).join(', ');

/** `07:00, airborne 07:10, touch-down 09:00, on blocks 09:05`; a time on a later day names the day. UTC. */
export function timesWords({ missing, offBlockAt, airborneAt, landedAt, onBlockAt }: Leg): string {
  const clock = (at: string) => {
    const { hour, minute } = wallIn('UTC', at);
    const day = dayText(at, 'UTC') === dayText(offBlockAt, 'UTC') ? '' : `${dayText(at, 'UTC')} `;
    return `${day}${hour}:${minute}`;
  };
  const times: [string, string | null][] = [
    ['off blocks', missing.includes('off-block') ? null : offBlockAt],
    ['airborne', airborneAt],
    ['touch-down', landedAt],
    ['on blocks', onBlockAt],
  ];
  return times.flatMap(([what, at]) => (at === null ? [] : [`${what} ${clock(at)}`])).join(', ');
}
