import { EntitySchema } from 'typeorm';
import { id, instant, json, key, nullable, text, yesNo } from './column.js';
import { toMember, within } from './foreign-key.js';

/** A named person's answer to a question that only a person can settle. */
export interface JudgementRow {
  operatorId: string;
  id: string;
  aircraftId: string;
  flightId: string | null;
  /** `<entry>/<row>/<judgement id>`, or `combination`. */
  judgement: string;
  accepted: boolean;
  personId: string;
  role: string;
  /** What was accepted, e.g. the defects and rows of a combination. */
  covers: Record<string, unknown>;
  at: string;
  validUntil: string | null;
  entryId: string;
}

export const JudgementTable = new EntitySchema<JudgementRow>({
  name: 'judgement',
  columns: {
    operatorId: key(),
    id: key(),
    aircraftId: id(),
    flightId: id(nullable),
    judgement: text(),
    accepted: yesNo(),
    personId: id(),
    role: text(),
    covers: json({ default: {} }),
    at: instant(),
    validUntil: instant(nullable),
    entryId: id(),
  },
  indices: [{ name: 'judgement_of_aircraft', columns: ['operatorId', 'aircraftId', 'at'] }],
  foreignKeys: [
    within('judgement_aircraft', 'aircraft', 'aircraftId'),
    within('judgement_flight', 'flight', 'flightId'),
    toMember('judgement_person', 'personId'),
    within('judgement_entry', 'record_entry', 'entryId'),
  ],
});
