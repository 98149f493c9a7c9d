import { type Owner, ownerInWords, type ShiftList, stateOf, thingInWords } from '#deferrals';
import type { AircraftRow, Tx } from '#store';
import type { OpenedDefect } from '../defects/defect-book.js';
import { firstWords } from '../defects/short-text.js';
import { defectNumber } from '../defects/views.js';
import { itemOfRow } from './left-elsewhere.js';
import { ownerOfRow } from './owner-of-row.js';

/** What a shift hands over: everything left on the aircraft, whoever owns it, and every open item, in words. */
export async function shiftListOf(
  tx: Tx,
  aircraft: AircraftRow,
  opened: readonly OpenedDefect[],
): Promise<ShiftList> {
  const rows = await tx.register.ofAircraft(aircraft.id);
  const words = (owner: Owner | null): string => ownerWords(owner, aircraft, opened);
  return {
    left: rows.map((row) => ({
      id: row.id,
      words: thingInWords(itemOfRow(row)),
      owner: words(ownerOfRow(row)),
    })),
    open: opened.map(
      ({ row, life }) => `${defectNumber(aircraft, row)} ${firstWords(life.description, 60)} (${stateOf(life)})`,
    ),
  };
}

/** "Q-KEA/2", "modification MOD 44", "nobody". */
export function ownerWords(
  owner: Owner | null,
  aircraft: Pick<AircraftRow, 'registration'>,
  opened: readonly OpenedDefect[],
): string {
  if (owner?.kind !== 'defect') return ownerInWords(owner);
  const found = opened.find(({ row }) => row.id === owner.defect);
  return found ? defectNumber(aircraft, found.row) : 'an item that is closed';
}
