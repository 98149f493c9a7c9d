/**
 * What of each entry is fitted to this aircraft. The configuration may be unknown; then several sub-entries are possible,
 * and every question about units is answered for each of them.
 */
import type { EntryRef, Mel, MelAircraft, SubEntry, SubEntryMatch } from '#mel';
import type { Unit } from './unit.js';

export class Fitted {
  readonly #matches = new Map<string, SubEntryMatch>();

  constructor(
    readonly mel: Mel,
    readonly aircraft: MelAircraft,
  ) {}

  match(entry: string): SubEntryMatch {
    const known = this.#matches.get(entry);
    if (known !== undefined) return known;
    const match = this.mel.matchSubEntry(entry, this.aircraft);
    this.#matches.set(entry, match);
    return match;
  }

  /** The sub-entries that may be the aircraft's own; one when that is known, none when the item is not fitted. */
  subEntries(entry: string): readonly SubEntry[] {
    const match = this.match(entry);
    return match.kind === 'one' ? [match.subEntry] : match.kind === 'unknown' ? match.candidates : [];
  }

  /** The units a reference means: those named, or all, as far as they are fitted in any possible configuration. */
  unitsOf({ entry, units }: EntryRef): Unit[] {
    const fitted = new Set(this.subEntries(entry).flatMap((subEntry) => subEntry.units));
    return [...fitted].filter((unit) => units === undefined || units.includes(unit)).map((unit) => ({ entry, unit }));
  }
}
