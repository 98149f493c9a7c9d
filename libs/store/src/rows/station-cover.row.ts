import { EntitySchema } from 'typeorm';
import { id, instant, key, nullable, text, texts, version } from './column.js';
import { toMember, within } from './foreign-key.js';

/**
 * What is known of the people at a station: that somebody authorised and equipped is there, or that nobody is. It is
 * entered with its source, holds from one instant to another or standing, and ends when it holds no longer; it is never
 * taken away. What is not entered is not known.
 */
export interface StationCoverRow {
  operatorId: string;
  id: string;
  station: string;
  /** Null: nobody is there. */
  personId: string | null;
  /** What the person has there: ground air, a test set, a lift. */
  equipment: string[];
  /** Null: as long as anybody knows. */
  fromAt: string | null;
  /** Exclusive; null: standing. */
  untilAt: string | null;
  source: string;
  enteredBy: string | null;
  enteredAt: string;
  endedAt: string | null;
  version: number;
}

export const StationCoverTable = new EntitySchema<StationCoverRow>({
  name: 'station_cover',
  columns: {
    operatorId: key(),
    id: key(),
    station: text(),
    personId: id(nullable),
    equipment: texts({ default: [] }),
    fromAt: instant(nullable),
    untilAt: instant(nullable),
    source: text(),
    enteredBy: id(nullable),
    enteredAt: instant(),
    endedAt: instant(nullable),
    version: version(),
  },
  indices: [{ name: 'station_cover_in_force', columns: ['operatorId', 'station'], where: 'ended_at is null' }],
  checks: [{ name: 'station_cover_from_before_until', expression: 'from_at < until_at' }],
  foreignKeys: [
    within('station_cover_station', 'station', 'station', 'code'),
    toMember('station_cover_person', 'personId'),
    toMember('station_cover_entered_by', 'enteredBy'),
  ],
});
