import { EntitySchema } from 'typeorm';
import { id, instant, key, nullable, text, version } from './column.js';
import { toMember, within } from './foreign-key.js';

/**
 * A deadline that newer time-zone data puts at another instant. It begins when a server with that data looks, and until a
 * person confirms it the earlier of the two ends counts. It stays afterwards: the stored deadline is read through it.
 */
export interface ZoneDifferenceRow {
  operatorId: string;
  id: string;
  defectId: string;
  zone: string;
  tzdbBefore: string;
  tzdbAfter: string;
  /** Exclusive ends. */
  endsBefore: string;
  endsAfter: string;
  foundAt: string;
  confirmedAt: string | null;
  confirmedBy: string | null;
  version: number;
}

export const ZoneDifferenceTable = new EntitySchema<ZoneDifferenceRow>({
  name: 'zone_difference',
  columns: {
    operatorId: key(),
    id: key(),
    defectId: id(),
    zone: text(),
    tzdbBefore: text(),
    tzdbAfter: text(),
    endsBefore: instant(),
    endsAfter: instant(),
    foundAt: instant(),
    confirmedAt: instant(nullable),
    confirmedBy: id(nullable),
    version: version(),
  },
  uniques: [
    {
      name: 'zone_difference_once',
      columns: ['operatorId', 'defectId', 'zone', 'tzdbBefore', 'endsBefore', 'tzdbAfter'],
    },
  ],
  checks: [
    { name: 'zone_difference_differs', expression: 'ends_before <> ends_after' },
    { name: 'zone_difference_confirmed', expression: '(confirmed_at is null) = (confirmed_by is null)' },
  ],
  foreignKeys: [
    within('zone_difference_defect', 'defect', 'defectId'),
    toMember('zone_difference_person', 'confirmedBy'),
  ],
});
