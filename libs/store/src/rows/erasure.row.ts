import { EntitySchema } from 'typeorm';
import { instant, key, nullable, text } from './column.js';
import { toMember } from './foreign-key.js';

/** That the personal data of somebody were erased, for each operator the person worked for. It names nobody. */
export interface ErasureRow {
  operatorId: string;
  personId: string;
  reference: string;
  erasedAt: string;
  /** Reference of whoever signed it; null where the program did it. */
  erasedBy: string | null;
}

export const ErasureTable = new EntitySchema<ErasureRow>({
  name: 'erasure',
  columns: {
    operatorId: key(),
    personId: key(),
    reference: text(),
    erasedAt: instant(),
    erasedBy: text(nullable),
  },
  foreignKeys: [toMember('erasure_person', 'personId')],
});
