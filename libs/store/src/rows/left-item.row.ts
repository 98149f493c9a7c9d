import { EntitySchema } from 'typeorm';
import { id, instant, key, nullable, text, version } from './column.js';
import { toMember, within } from './foreign-key.js';

/** Something left altered on an aircraft, from when it was fitted until it is removed. */
export interface LeftItemRow {
  operatorId: string;
  id: string;
  aircraftId: string;
  /** The defect it belongs to; null when something else owns it. */
  defectId: string | null;
  kind: string;
  place: string;
  /** The number on its collar, streamer, placard or label. */
  tag: string | null;
  undo: string;
  /** The number of the modification, directive or permit that owns it, where no defect does. Neither: an orphan. */
  ownedBy: string | null;
  /** `modification`, `directive` or `permit`; null where none of them owns it. */
  ownerKind: string | null;
  /** The last instant of that document (exclusive); null when it has no end. */
  ownerUntil: string | null;
  /** The procedure or card it was left by, where there was one. */
  under: string | null;
  fittedBy: string;
  fittedAt: string;
  removedBy: string | null;
  removedAt: string | null;
  verifiedBy: string | null;
  verifiedAt: string | null;
  version: number;
}

export const LeftItemTable = new EntitySchema<LeftItemRow>({
  name: 'left_item',
  columns: {
    operatorId: key(),
    id: key(),
    aircraftId: id(),
    defectId: id(nullable),
    kind: text(),
    place: text(),
    tag: text(nullable),
    undo: text(),
    ownedBy: text(nullable),
    ownerKind: text(nullable),
    ownerUntil: instant(nullable),
    under: text(nullable),
    fittedBy: id(),
    fittedAt: instant(),
    removedBy: id(nullable),
    removedAt: instant(nullable),
    verifiedBy: id(nullable),
    verifiedAt: instant(nullable),
    version: version(),
  },
  checks: [
    {
      name: 'left_item_owned_once',
      expression:
        '(owned_by is null) = (owner_kind is null) and (owner_until is null or owned_by is not null) and (defect_id is null or owned_by is null)',
    },
  ],
  indices: [{ name: 'left_item_of_aircraft', columns: ['operatorId', 'aircraftId'] }],
  foreignKeys: [
    within('left_item_aircraft', 'aircraft', 'aircraftId'),
    within('left_item_defect', 'defect', 'defectId'),
    toMember('left_item_fitted_by', 'fittedBy'),
    toMember('left_item_removed_by', 'removedBy'),
    toMember('left_item_verified_by', 'verifiedBy'),
  ],
});
