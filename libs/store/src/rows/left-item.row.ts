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
  /** The modification, directive or permit that owns it, where no defect does. Neither: an orphan. */
  ownedBy: string | null;
  fittedBy: string;
  fittedAt: string;
  removedBy: string | null;
  removedAt: string | null;
  verifiedBy: string | null;
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
    fittedBy: id(),
    fittedAt: instant(),
    removedBy: id(nullable),
    removedAt: instant(nullable),
    verifiedBy: id(nullable),
    version: version(),
  },
  indices: [{ name: 'left_item_of_aircraft', columns: ['operatorId', 'aircraftId'] }],
  foreignKeys: [
    within('left_item_aircraft', 'aircraft', 'aircraftId'),
    within('left_item_defect', 'defect', 'defectId'),
    toMember('left_item_fitted_by', 'fittedBy'),
    toMember('left_item_removed_by', 'removedBy'),
    toMember('left_item_verified_by', 'verifiedBy'),
  ],
});
