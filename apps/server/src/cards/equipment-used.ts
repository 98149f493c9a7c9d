import { type CardWork, dayIn, type EquipmentUsed } from '#deferrals';
import { statedNeeds } from '#mel';
import type { Tx } from '#store';

export type LastUsed = ReadonlyMap<string, Pick<EquipmentUsed, 'number' | 'calibratedUntil'>>;

/** What the operator used last, by what the card calls it, so that cold hands need not type it again; in calibration only. */
export async function lastUsed(tx: Tx, { started }: CardWork, at: string, base: string): Promise<LastUsed> {
  const asked = new Set(started.card.steps.flatMap((step) => statedNeeds(step).map(({ what }) => what)));
  if (asked.size === 0) return new Map();
  const today = dayIn(at, base);
  const used = (await tx.acts.equipmentUsed()) as EquipmentUsed[];
  const good = used.filter(({ calibratedUntil: until }) => until === null || until >= today);
  return new Map(
    good.flatMap(({ what, number, calibratedUntil }) =>
      asked.has(what) ? [[what, { number, calibratedUntil }]] : [],
    ),
  );
}
