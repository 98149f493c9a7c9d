import { EntitySchema } from 'typeorm';
import { instant, key, nullable, text, texts, version, whole } from './column.js';
import { toOperator, within } from './foreign-key.js';

/** One aircraft. Its version goes up with every act that can change what may be flown with it. */
export interface AircraftRow {
  operatorId: string;
  id: string;
  registration: string;
  type: string;
  serial: number | null;
  /** Configuration codes fitted; null when not known. */
  configuration: string[] | null;
  /** Code of the station where it is based; null when nobody said. */
  basedAt: string | null;
  /** Since when it is out of the fleet; null while it is in service. */
  retiredAt: string | null;
  version: number;
}

export const AircraftTable = new EntitySchema<AircraftRow>({
  name: 'aircraft',
  columns: {
    operatorId: key(),
    id: key(),
    registration: text(),
    type: text(),
    serial: whole(nullable),
    configuration: texts(nullable),
    basedAt: text(nullable),
    retiredAt: instant(nullable),
    version: version(),
  },
  uniques: [{ name: 'aircraft_registration', columns: ['operatorId', 'registration'] }],
  foreignKeys: [toOperator('aircraft_operator'), within('aircraft_based_at', 'station', 'basedAt', 'code')],
});
