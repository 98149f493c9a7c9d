import { EntitySchema } from 'typeorm';
import { key, text } from './column.js';
import { toOperator } from './foreign-key.js';

/** Who employs people that work on an operator's aircraft, and the number of its approval. */
export interface OrganisationRow {
  operatorId: string;
  id: string;
  name: string;
  approvalNumber: string;
}

export const OrganisationTable = new EntitySchema<OrganisationRow>({
  name: 'organisation',
  columns: { operatorId: key(), id: key(), name: text(), approvalNumber: text() },
  uniques: [{ name: 'organisation_approval', columns: ['operatorId', 'approvalNumber'] }],
  foreignKeys: [toOperator('organisation_operator')],
});
