import type { Used } from '#intervals';
import { listOf, pairsOf, wholeOf } from './pairs.js';

const WHOLE = [
  'flights',
  'flightDays',
  'flightMinutes',
  'blockMinutes',
  'cycles',
  'engineMinutes',
  'engineCycles',
  'designatedDepartures',
  'baseOpportunities',
];
const TEXT = ['lastFlightDayOn', 'lastFlightDayStartsAt', 'station', 'standsSince'];

/** What `--used "flightMinutes=7116; done=M1"` says was used, instead of or beside what is counted from movements. */
export function askedUse(text: string | undefined): Used | undefined {
  if (text === undefined) return undefined;
  const pairs = pairsOf('--used', text, [...WHOLE, ...TEXT, 'done']);
  const used = [...pairs].map(([name, value]) => {
    if (name === 'done') return [name, listOf(value)];
    return [name, WHOLE.includes(name) ? wholeOf(`--used ${name}`, value) : value];
  });
  return Object.fromEntries(used) as Used;
}
