import { EntitySchema } from 'typeorm';
import { instant, json, key, text, whole } from './column.js';
import { toMember } from './foreign-key.js';

/** The answer given to one request, kept under the key its sender chose. */
export interface IdempotencyRow {
  operatorId: string;
  personId: string;
  key: string;
  fingerprint: string;
  status: number;
  headers: Record<string, string>;
  body: string;
  createdAt: string;
}

export const IdempotencyTable = new EntitySchema<IdempotencyRow>({
  name: 'idempotency',
  columns: {
    operatorId: key(),
    personId: key(),
    key: text({ primary: true }),
    fingerprint: text(),
    status: whole(),
    headers: json({ default: {} }),
    body: text(),
    createdAt: instant({ default: () => 'clock_timestamp()' }),
  },
  indices: [{ name: 'idempotency_age', columns: ['operatorId', 'createdAt'] }],
  foreignKeys: [toMember('idempotency_person', 'personId')],
});
