import { EntitySchema } from 'typeorm';
import { id, instant, json, key, nullable, text, whole } from './column.js';
import { toMember, within } from './foreign-key.js';

/** One act in the life of a defect, in order from 1. The life is these acts and nothing else. */
export interface DefectActRow {
  operatorId: string;
  defectId: string;
  seq: number;
  /** What a correction points at. */
  id: string;
  kind: string;
  at: string;
  personId: string | null;
  payload: object;
  /** The record entry written with it. */
  entryId: string;
}

export const DefectActTable = new EntitySchema<DefectActRow>({
  name: 'defect_act',
  columns: {
    operatorId: key(),
    defectId: key(),
    seq: whole({ primary: true }),
    id: id(),
    kind: text(),
    at: instant(),
    personId: id(nullable),
    payload: json(),
    entryId: id(),
  },
  uniques: [{ name: 'defect_act_id', columns: ['operatorId', 'id'] }],
  indices: [
    {
      name: 'defect_act_equipment',
      columns: ['operatorId', 'at'],
      where: "payload -> 'used' is not null",
    },
  ],
  foreignKeys: [
    within('defect_act_defect', 'defect', 'defectId'),
    toMember('defect_act_person', 'personId'),
    within('defect_act_entry', 'record_entry', 'entryId'),
  ],
});
