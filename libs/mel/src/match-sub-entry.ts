/**
 * Which sub-entry of an entry is written for one aircraft. Taking the row of another configuration is a classic mistake,
 * so what is not known about the aircraft is said, never guessed.
 */
import type { AppliesTo, Entry, SubEntry } from './content.js';

/** What a MEL needs to know of an aircraft; null is not known. */
export interface MelAircraft {
  type: string;
  configuration: readonly string[] | null;
  serial: number | null;
}

export type Unknown = 'configuration' | 'serial';

export type SubEntryMatch =
  | { kind: 'one'; subEntry: SubEntry }
  | { kind: 'none' }
  /** `missing` names what must be learnt; empty when the aircraft fits several by what is known. */
  | { kind: 'unknown'; candidates: SubEntry[]; missing: Unknown[] };

type Fit = 'yes' | 'no' | Unknown[];

const fitOf = (appliesTo: AppliesTo, { type, configuration, serial }: MelAircraft): Fit => {
  const { types, configurations, serials } = appliesTo;
  const missing: Unknown[] = [];
  if (types !== undefined && !types.includes(type)) return 'no';
  if (configurations !== undefined) {
    if (configuration === null) missing.push('configuration');
    else if (!configurations.some((code) => configuration.includes(code))) return 'no';
  }
  if (serials !== undefined) {
    if (serial === null) missing.push('serial');
    else if (!serials.some(({ from, to }) => from <= serial && serial <= to)) return 'no';
  }
  return missing.length === 0 ? 'yes' : missing;
};

/** Exactly one, none, or not known which. */
export const matchSubEntry = (entry: Entry, aircraft: MelAircraft): SubEntryMatch => {
  const fits = entry.subEntries
    .map((subEntry) => ({ subEntry, fit: fitOf(subEntry.appliesTo ?? {}, aircraft) }))
    .filter(({ fit }) => fit !== 'no');
  const [first, ...others] = fits;
  if (first === undefined) return { kind: 'none' };
  if (others.length === 0 && first.fit === 'yes') return { kind: 'one', subEntry: first.subEntry };
  return {
    kind: 'unknown',
    candidates: fits.map(({ subEntry }) => subEntry),
    missing: [...new Set(fits.flatMap(({ fit }) => (Array.isArray(fit) ? fit : [])))],
  };
};
