import { EntitySchema } from 'typeorm';
import { id, instant, json, key, nullable, text, whole } from './column.js';
import { toMember, within } from './foreign-key.js';

/** One act on the register of an aircraft, in order from 1: what no defect owns, and hand-overs between shifts. */
export interface RegisterActRow {
  operatorId: string;
  aircraftId: string;
  seq: number;
  id: string;
  kind: string;
  at: string;
  personId: string | null;
  payload: object;
  /** The record entry written with it. */
  entryId: string;
}

export const RegisterActTable = new EntitySchema<RegisterActRow>({
  name: 'register_act',
  columns: {
    operatorId: key(),
    aircraftId: key(),
    seq: whole({ primary: true }),
    id: id(),
    kind: text(),
    at: instant(),
    personId: id(nullable),
    payload: json(),
    entryId: id(),
  },
  uniques: [{ name: 'register_act_id', columns: ['operatorId', 'id'] }],
  foreignKeys: [
    within('register_act_aircraft', 'aircraft', 'aircraftId'),
    toMember('register_act_person', 'personId'),
    within('register_act_entry', 'record_entry', 'entryId'),
  ],
});
