import type { Preset, PresetName } from './presets/preset.js';
import { presetOf } from './presets/presets.js';

/** What the operator settled about counting and about a limit that runs out in flight. */
export interface CountingSettings {
  /** `departure-inside`: the flight must leave before the end. `arrival-inside`: it must be on blocks before it. */
  expiryInFlight: 'departure-inside' | 'arrival-inside';
  hourClock: 'airborne' | 'block';
  hoursCountedAt: 'arrival' | 'departure';
  rampReturnMakesFlightDay: boolean;
}

/** The settings of a preset, with what the operator set otherwise. */
export function countingSettings(
  preset?: PresetName | Preset,
  own: Partial<CountingSettings> = {},
): CountingSettings {
  const { expiryInFlight, hourClock, hoursCountedAt, rampReturnMakesFlightDay } = presetOf(preset);
  return {
    expiryInFlight: own.expiryInFlight ?? expiryInFlight.value,
    hourClock: own.hourClock ?? hourClock.value,
    hoursCountedAt: own.hoursCountedAt ?? hoursCountedAt.value,
    rampReturnMakesFlightDay: own.rampReturnMakesFlightDay ?? rampReturnMakesFlightDay.value,
  };
}
