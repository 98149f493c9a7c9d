import type { CardWork, DefectLife } from '#deferrals';
import type { MelContent } from '#mel';
import type { Tx } from '#store';
import { livesOf } from '../defects/defect-book.js';
import { defectNumber } from '../defects/views.js';

/** Work on a card that is under way while something that it came from is loaded anew. */
export interface OpenCard {
  number: string;
  life: DefectLife;
  work: CardWork;
}

/** Every card under way on the aircraft of a type. */
export async function openCardsOf(tx: Tx, aircraftType: string): Promise<OpenCard[]> {
  const found: OpenCard[] = [];
  for (const aircraft of await tx.aircraft.list()) {
    if (aircraft.type !== aircraftType) continue;
    for (const { row, life } of await livesOf(tx, await tx.defects.open(aircraft.id))) {
      const number = defectNumber(aircraft, row);
      found.push(...life.cards.filter(({ ended }) => ended === null).map((work) => ({ number, life, work })));
    }
  }
  return found;
}

const GOES_ON = 'it goes on by the text with which it began';

/** Cards under way that the MEL no longer holds: its procedure, its text, or the entry it is done for. */
export const outsideMel = (open: readonly OpenCard[], mel: MelContent): string[] =>
  open.flatMap(({ number, life, work: { started } }) => {
    const { procedure, card } = started;
    const entry = procedure?.split('/')[0] ?? life.item?.entry ?? null;
    const gone =
      entry !== null && !mel.entries.some((one) => one.number === entry)
        ? `entry ${entry}`
        : procedure !== null && !names(mel, procedure, card.id)
          ? `procedure ${procedure} by this card`
          : null;
    return gone === null
      ? []
      : [`${number}: card "${card.title}" is under way, and the MEL has no ${gone}: ${GOES_ON}`];
  });

/** Cards under way that a library no longer holds. */
export const outsideLibrary = (open: readonly OpenCard[], cards: readonly { id: string }[]): string[] =>
  open.flatMap(({ number, work: { started } }) =>
    started.procedure !== null || cards.some(({ id }) => id === started.card.id)
      ? []
      : [`${number}: card "${started.card.title}" is under way, and the library has no such card: ${GOES_ON}`],
  );

function names({ entries }: MelContent, work: string, card: string): boolean {
  const [number, row, id] = work.split('/');
  const rows = entries.filter((one) => one.number === number).flatMap(({ subEntries }) => subEntries);
  return rows
    .flatMap((sub) => sub.rows)
    .some((one) => one.id === row && (one.procedures ?? []).some((the) => the.id === id && the.card === card));
}
