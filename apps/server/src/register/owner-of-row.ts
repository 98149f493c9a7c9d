import type { Owner } from '#deferrals';
import type { LeftItemRow } from '#store';

/** What a line of the register says it belongs to; null for an orphan. Whether that still stands, the gates say. */
export function ownerOfRow({ defectId, ownedBy, ownerKind, ownerUntil }: LeftItemRow): Owner | null {
  if (defectId !== null) return { kind: 'defect', defect: defectId };
  if (ownedBy === null) return null;
  const kind = ownerKind === 'directive' || ownerKind === 'permit' ? ownerKind : 'modification';
  return { kind, reference: ownedBy, until: ownerUntil };
}
