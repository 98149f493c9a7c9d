import { EntitySchema } from 'typeorm';
import { key, text } from './column.js';
import { toOperator } from './foreign-key.js';

/** A place where aircraft stop, with the IANA zone of its local time. */
export interface StationRow {
  operatorId: string;
  code: string;
  name: string;
  zone: string;
}

export const StationTable = new EntitySchema<StationRow>({
  name: 'station',
  columns: { operatorId: key(), code: text({ primary: true }), name: text(), zone: text() },
  foreignKeys: [toOperator('station_operator')],
});
