import { IntervalInputError } from '../interval-input-error.js';
import { EASA } from './easa.js';
import { FAA } from './faa.js';
import type { Preset, PresetName } from './preset.js';
import { TCCA_2006 } from './tcca-2006.js';
import { TCCA_2022 } from './tcca-2022.js';

export const PRESETS: Readonly<Record<PresetName, Preset>> = {
  easa: EASA,
  faa: FAA,
  'tcca-2006': TCCA_2006,
  'tcca-2022': TCCA_2022,
};

export const DEFAULT_PRESET: PresetName = 'easa';

/** The preset of that name, or the operator's own as given. Throws IntervalInputError for a name that is none. */
export function presetOf(preset: PresetName | Preset = DEFAULT_PRESET): Preset {
  if (typeof preset !== 'string') return preset;
  if (!Object.hasOwn(PRESETS, preset)) {
    throw new IntervalInputError('preset', preset, `is none of ${Object.keys(PRESETS).join(', ')}.`);
  }
  return PRESETS[preset];
}
