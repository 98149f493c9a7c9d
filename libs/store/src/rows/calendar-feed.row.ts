import { EntitySchema } from 'typeorm';
import { id, instant, key, nullable, text, version, yesNo } from './column.js';
import { toMember, within } from './foreign-key.js';

/**
 * An address under which a person's calendar program reads deadlines. It begins when the person asks for it, and ends when
 * it is revoked or the person no longer works for the operator. The token in the address is never kept, only its hash.
 */
export interface CalendarFeedRow {
  operatorId: string;
  id: string;
  personId: string;
  /** SHA-256 of the token, as 64 hex digits. */
  tokenHash: string;
  /** Null for every aircraft of the operator. */
  aircraftId: string | null;
  /** True when it holds the deferrals of every operator that the person works for at that moment. */
  everywhere: boolean;
  /** What the person calls it. */
  label: string;
  createdAt: string;
  revokedAt: string | null;
  version: number;
}

export const CalendarFeedTable = new EntitySchema<CalendarFeedRow>({
  name: 'calendar_feed',
  columns: {
    operatorId: key(),
    id: key(),
    personId: id(),
    tokenHash: text(),
    aircraftId: id(nullable),
    everywhere: yesNo({ default: false }),
    label: text(),
    createdAt: instant(),
    revokedAt: instant(nullable),
    version: version(),
  },
  uniques: [{ name: 'calendar_feed_token', columns: ['operatorId', 'tokenHash'] }],
  indices: [{ name: 'calendar_feed_of_person', columns: ['operatorId', 'personId'] }],
  checks: [
    { name: 'calendar_feed_token_hash', expression: "token_hash ~ '^[0-9a-f]{64}$'" },
    { name: 'calendar_feed_of_one', expression: 'not everywhere or aircraft_id is null' },
  ],
  foreignKeys: [
    toMember('calendar_feed_person', 'personId'),
    within('calendar_feed_aircraft', 'aircraft', 'aircraftId'),
  ],
});
