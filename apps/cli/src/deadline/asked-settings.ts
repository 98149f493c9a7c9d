import { countingSettings, type CountingSettings, type PresetName } from '#intervals';
import { UsageError } from '../usage-error.js';
import { listOf, pairsOf, wholeOf } from './pairs.js';

const CHOICES = {
  expiryInFlight: ['departure-inside', 'arrival-inside'],
  hourClock: ['airborne', 'block'],
  hoursCountedAt: ['arrival', 'departure'],
  rampReturnMakesFlightDay: ['yes', 'no'],
  flightDay: ['calendar-day', 'from-first-out'],
  equalityAtLimit: ['inside', 'outside'],
} as const;

const LISTS = ['designatedStations', 'bases'];
const NAMES = [...Object.keys(CHOICES), ...LISTS, 'opportunityMinutes'];

/** The settings of a preset with what `--settings "hourClock=block; bases=QVR QHT"` says otherwise. */
export function askedSettings(preset: PresetName | undefined, text: string | undefined): CountingSettings {
  const settings = countingSettings(preset);
  if (text === undefined) return settings;
  const own = [...pairsOf('--settings', text, NAMES)].map(([name, value]) => [name, readValue(name, value)]);
  // Each value was read as its own setting takes it.
  return { ...settings, ...(Object.fromEntries(own) as Partial<CountingSettings>) };
}

function readValue(name: string, value: string): string | number | boolean | string[] {
  if (LISTS.includes(name)) return listOf(value);
  if (name === 'opportunityMinutes') return wholeOf(`--settings ${name}`, value);
  const choices: readonly string[] = CHOICES[name as keyof typeof CHOICES];
  if (!choices.includes(value)) {
    throw new UsageError(`--settings ${name} "${value}" is none of ${choices.join(', ')}`);
  }
  return name === 'rampReturnMakesFlightDay' ? value === 'yes' : value;
}
