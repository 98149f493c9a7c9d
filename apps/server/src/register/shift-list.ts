import {
  type CardWork,
  doneBy,
  type Owner,
  ownerInWords,
  type ShiftList,
  stateOf,
  stepInWords,
  thingInWords,
} from '#deferrals';
import type { AircraftRow, Tx } from '#store';
import type { OpenedDefect } from '../defects/defect-book.js';
import { firstWords } from '../defects/short-text.js';
import { defectNumber } from '../defects/views.js';
import { itemOfRow } from './left-elsewhere.js';
import { ownerOfRow } from './owner-of-row.js';

/**
 * What a shift hands over, in words: everything left on the aircraft, whoever owns it, every open item, and every card
 * that was begun and is not signed, with the step it stands at.
 */
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
    open: opened.flatMap(({ row, life }) => {
      const number = defectNumber(aircraft, row);
      return [
        `${number} ${firstWords(life.description, 60)} (${stateOf(life)})`,
        ...life.cards.filter(({ ended }) => ended === null).map((work) => `${number} ${halfWorked(work)}`),
      ];
    }),
  };
}

/** `card "Filter changed" begun: 3 of 9 steps done, next: step 4 "Renew both seals"` */
function halfWorked(work: CardWork): string {
  const { card } = work.started;
  const toDo = card.steps.filter((step) => !doneBy(work, step));
  const next = toDo[0] ? `, next: step ${stepInWords(card, toDo[0])}` : ', not signed yet';
  return `card "${card.title}" begun: ${card.steps.length - toDo.length} of ${card.steps.length} steps done${next}`;
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
