import type { DefectLife, LeftElsewhere, LeftItem } from '#deferrals';
import type { AircraftRow, LeftItemRow, Tx } from '#store';
import { ownerOfRow } from './owner-of-row.js';

/** What is left on an aircraft under other defects, under documents, and under nobody. */
export async function leftElsewhere(
  tx: Tx,
  { id }: Pick<AircraftRow, 'id'>,
  others: readonly DefectLife[],
): Promise<LeftElsewhere[]> {
  const rows = (await tx.register.ofAircraft(id)).filter(({ defectId }) => defectId === null);
  return [
    ...others.flatMap(({ defect, left }) =>
      left.map((item) => ({ item, owner: { kind: 'defect' as const, defect } })),
    ),
    ...rows.map((row) => ({ item: itemOfRow(row), owner: ownerOfRow(row) })),
  ];
}

export function itemOfRow({ id, kind, place, tag, undo }: LeftItemRow): LeftItem {
  return { id, kind: kind as LeftItem['kind'], where: place, tag: tag ?? '', undo };
}
