/** The register of an aircraft follows the acts: what an act leaves is added, what it undoes, moves or corrects is marked. */
import { type Act, type LeftItem, type Owner, thingsLeftBy } from '#deferrals';
import type { AircraftRow, DefectRow, LeftItemRow, Tx } from '#store';

/** Where the lines of a register are kept: the database, or memory when it is rebuilt from the record. */
export interface KeepsLines {
  register: Pick<Tx['register'], 'get' | 'add' | 'change' | 'ofAircraft'>;
}

/** @param now when the act is entered */
export async function keepRegister(
  tx: KeepsLines,
  aircraft: Pick<AircraftRow, 'id'>,
  row: Pick<DefectRow, 'id'>,
  act: Act,
  now: string,
): Promise<void> {
  const by = act.by.person;
  const items = thingsLeftBy(act);
  await addThings(tx, { aircraft, items, owner: { kind: 'defect', defect: row.id }, under: underOf(act), by, now });
  if (act.kind === 'undone') await removeThings(tx, act.items, by, now);
  if (act.kind === 'card-stepped' && act.result.kind === 'in' && act.result.item !== null) {
    await removeThings(tx, [act.result.item], by, now);
  }
  if (act.kind === 'placard-removed') await removeThings(tx, [act.item], by, now);
  if (act.kind === 'given-over') await changeThings(tx, act.items, () => ownedBy(act.to));
  if (act.kind === 'transferred') {
    await changeThings(tx, placesOf(act.moved), ({ id }) => ({ place: whereNow(act.moved, id) }));
  }
  if (act.kind === 'corrected' && act.item !== null) {
    await changeThings(tx, [act.item], () => (act.field === 'tag' ? { tag: act.now } : { place: act.now }));
  }
  if (act.kind === 'generally-verified') await seeRemovals(tx, aircraft, row.id, by, now);
}

interface Added {
  aircraft: Pick<AircraftRow, 'id'>;
  items: readonly LeftItem[];
  owner: Owner | null;
  under: string | null;
  by: string;
  now: string;
}

/** A thing that two need stands in the register once. */
export async function addThings(tx: KeepsLines, { aircraft, items, owner, under, by, now }: Added): Promise<void> {
  for (const { id, kind, where, tag, undo } of items) {
    if ((await tx.register.get(id)) !== null) continue;
    const thing = { id, aircraftId: aircraft.id, kind, place: where, tag, undo, under };
    await tx.register.add({ ...thing, ...ownedBy(owner), fittedBy: by, fittedAt: now });
  }
}

export function removeThings(tx: KeepsLines, ids: readonly string[], by: string, now: string): Promise<void> {
  return changeThings(tx, ids, () => ({ removedBy: by, removedAt: now }));
}

export async function changeThings(
  tx: KeepsLines,
  ids: readonly string[],
  changesOf: (row: LeftItemRow) => Partial<LeftItemRow>,
): Promise<void> {
  for (const id of ids) {
    const item = await tx.register.get(id);
    if (item) await tx.register.change(id, item.version, changesOf(item));
  }
}

export function ownedBy(owner: Owner | null): Pick<LeftItemRow, 'defectId' | 'ownedBy' | 'ownerKind' | 'ownerUntil'> {
  const nobody = { defectId: null, ownedBy: null, ownerKind: null, ownerUntil: null };
  if (owner === null) return nobody;
  if (owner.kind === 'defect') return { ...nobody, defectId: owner.defect };
  return { ...nobody, ownedBy: owner.reference, ownerKind: owner.kind, ownerUntil: owner.until };
}

/** Who goes over the aircraft after the work sees that what was undone for it is undone. */
async function seeRemovals(
  tx: KeepsLines,
  { id }: Pick<AircraftRow, 'id'>,
  defectId: string,
  by: string,
  now: string,
): Promise<void> {
  const rows = await tx.register.ofAircraft(id, { removed: true });
  const unseen = rows.filter((one) => one.defectId === defectId && one.removedAt !== null && one.verifiedAt === null);
  for (const { id: item, version } of unseen) {
    await tx.register.change(item, version, { verifiedBy: by, verifiedAt: now });
  }
}

/** By what a thing was left: the procedure, the card, or for its placard. */
function underOf(act: Act): string | null {
  if (act.kind === 'procedure-signed') return act.work;
  if (act.kind === 'card-stepped') return `card step ${act.step}`;
  return act.kind === 'placard-fitted' ? 'placard' : null;
}

const placesOf = (moved: readonly { item: string }[]): string[] => moved.map(({ item }) => item);

function whereNow(moved: readonly { item: string; where: string }[], id: string): string {
  return moved.find(({ item }) => item === id)?.where ?? '';
}
