import type { AircraftRow, DefectRow, Tx } from '#store';
import { firstWords } from '../defects/short-text.js';
import type { MelShelf } from '../mel/mel-shelf.js';

/** Titles of the MEL entries of these aircraft, by type and number. */
export class Titles {
  private constructor(private readonly known: ReadonlyMap<string, string>) {}

  static async of(tx: Tx, shelf: MelShelf, aircraft: Iterable<AircraftRow>): Promise<Titles> {
    const known = new Map<string, string>();
    for (const type of new Set([...aircraft].map((one) => one.type))) {
      const shelved = await shelf.inForce(tx, type);
      for (const { number, title } of shelved?.mel.entries ?? []) known.set(`${type}/${number}`, title);
    }
    return new Titles(known);
  }

  /** Null where the MEL names none. */
  entry({ type }: AircraftRow, { entry }: DefectRow): string | null {
    return entry === null ? null : (this.known.get(`${type}/${entry}`) ?? null);
  }

  /** What an item is called: by its entry, else by what was written up. */
  item(aircraft: AircraftRow, defect: DefectRow): string {
    return this.entry(aircraft, defect) ?? firstWords(defect.description, 60);
  }
}
