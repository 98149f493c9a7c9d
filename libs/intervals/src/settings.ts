import type { Preset, PresetName } from './presets/preset.js';
import { presetOf } from './presets/presets.js';

/** What the operator settled about counting and about a limit that runs out in flight. */
export interface CountingSettings {
  /** `departure-inside`: the flight must leave before the end. `arrival-inside`: it must be on blocks before it. */
  expiryInFlight: 'departure-inside' | 'arrival-inside';
  hourClock: 'airborne' | 'block';
  hoursCountedAt: 'arrival' | 'departure';
  rampReturnMakesFlightDay: boolean;
  /** A day from midnight to midnight in the base, or 24 hours from the first off-blocks. */
  flightDay: 'calendar-day' | 'from-first-out';
  /** Whether hours of flight or of an engine may reach their limit to the minute, or must stay below it. */
  equalityAtLimit: 'inside' | 'outside';
  /** Where a row that says "before the next departure from a designated station" ends; null: not settled. */
  designatedStations: readonly string[] | null;
  /** Where a row that says "at the first opportunity at a base" ends; null: not settled. */
  bases: readonly string[] | null;
  /** How long the aircraft stands at a base until that is an opportunity. */
  opportunityMinutes: number;
}

/** The settings of a preset, with what the operator set otherwise. */
export function countingSettings(
  preset?: PresetName | Preset,
  own: Partial<CountingSettings> = {},
): CountingSettings {
  const of = presetOf(preset);
  return {
    expiryInFlight: own.expiryInFlight ?? of.expiryInFlight.value,
    hourClock: own.hourClock ?? of.hourClock.value,
    hoursCountedAt: own.hoursCountedAt ?? of.hoursCountedAt.value,
    rampReturnMakesFlightDay: own.rampReturnMakesFlightDay ?? of.rampReturnMakesFlightDay.value,
    flightDay: own.flightDay ?? of.flightDay.value,
    equalityAtLimit: own.equalityAtLimit ?? of.equalityAtLimit.value,
    designatedStations: own.designatedStations ?? of.designatedStations.value,
    bases: own.bases ?? of.bases.value,
    opportunityMinutes: own.opportunityMinutes ?? of.opportunityMinutes.value,
  };
}
