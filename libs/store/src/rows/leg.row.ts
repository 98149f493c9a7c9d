import { EntitySchema } from 'typeorm';
import { day, id, instant, json, key, nullable, text, texts, whole } from './column.js';
import { toMember, within } from './foreign-key.js';

/**
 * One version of a leg that an aircraft flew, or began. The highest version counts; a correction appends another one and
 * the earlier ones stay as they were. A leg that turned out not to be one ends as withdrawn.
 *
 * Minutes are integers. Where off-block is not known, `offBlockAt` holds the first instant that is.
 */
export interface LegRow {
  operatorId: string;
  id: string;
  /** From 1. */
  version: number;
  aircraftId: string;
  /** As messages write it: `ZZ200`. */
  flight: string;
  /** Scheduled UTC day of the flight: that of its first leg. */
  scheduledOn: string;
  /** Among the legs of this flight and day, in the order flown. */
  sequence: number;
  fromStation: string | null;
  toStation: string | null;
  ending: 'arrived' | 'returned' | 'ramp' | 'under-way' | 'withdrawn';
  offBlockAt: string;
  airborneAt: string | null;
  landedAt: string | null;
  onBlockAt: string | null;
  blockMinutes: number;
  flightMinutes: number;
  cycles: number;
  landings: number;
  /** Times that are not known. */
  missing: string[];
  /** Reasons of a late departure, AHM 730, with their minutes. */
  delays: { code: string; minutes: number }[];
  divertedFrom: string | null;
  /** Two digits; null when none was given. */
  divertedReason: string | null;
  /** The planned flight that it is a leg of. */
  flightId: string | null;
  source: 'messages' | 'person';
  /** The message that brought this version. */
  messageId: string | null;
  personId: string | null;
  /** Why a person entered or corrected it. */
  reason: string | null;
  writtenAt: string;
  entryId: string;
}

export const LegTable = new EntitySchema<LegRow>({
  name: 'leg',
  columns: {
    operatorId: key(),
    id: key(),
    version: whole({ primary: true }),
    aircraftId: id(),
    flight: text(),
    scheduledOn: day(),
    sequence: whole(),
    fromStation: text(nullable),
    toStation: text(nullable),
    ending: text(),
    offBlockAt: instant(),
    airborneAt: instant(nullable),
    landedAt: instant(nullable),
    onBlockAt: instant(nullable),
    blockMinutes: whole(),
    flightMinutes: whole(),
    cycles: whole(),
    landings: whole(),
    missing: texts({ default: [] }),
    delays: json({ default: [] }),
    divertedFrom: text(nullable),
    divertedReason: text(nullable),
    flightId: id(nullable),
    source: text(),
    messageId: id(nullable),
    personId: id(nullable),
    reason: text(nullable),
    writtenAt: instant(),
    entryId: id(),
  },
  indices: [
    { name: 'leg_of_aircraft', columns: ['operatorId', 'aircraftId', 'offBlockAt'] },
    { name: 'leg_of_flight', columns: ['operatorId', 'flight', 'scheduledOn'] },
    { name: 'leg_of_plan', columns: ['operatorId', 'flightId'] },
  ],
  checks: [
    { name: 'leg_version_counted', expression: 'version > 0' },
    { name: 'leg_ending', expression: "ending in ('arrived', 'returned', 'ramp', 'under-way', 'withdrawn')" },
    { name: 'leg_block_minutes_counted', expression: 'block_minutes >= 0' },
    { name: 'leg_flight_minutes_counted', expression: 'flight_minutes >= 0' },
    { name: 'leg_cycles_counted', expression: 'cycles >= 0' },
    { name: 'leg_landings_counted', expression: 'landings >= 0' },
    { name: 'leg_source', expression: "source in ('messages', 'person')" },
  ],
  foreignKeys: [
    within('leg_aircraft', 'aircraft', 'aircraftId'),
    within('leg_flight', 'flight', 'flightId'),
    within('leg_message', 'movement_message', 'messageId'),
    toMember('leg_person', 'personId'),
    within('leg_entry', 'record_entry', 'entryId'),
  ],
});
