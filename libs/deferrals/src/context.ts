/** What a decision is given besides the history and the command. All of it comes in from outside: no clock is read. */
import type { CountingSettings, Preset, PresetName, Used } from '#intervals';
import type { BroughtRow, Entry, Row, SubEntry } from '#mel';
import type { LeftItem, Owner, Times } from './acts.js';
import type { DefectLife } from './defect-life.js';
import type { Actor, Signature } from './people.js';
import { needLateReason } from './writing-up/admit-times.js';

/** What the operator settled about the life of a defect. */
export interface DeferralSettings {
  /** UTC or one IANA zone: the operator's days. */
  base: string;
  /** Version of the time-zone data in use. */
  tzdb: string;
  /** The newest version that deadlines of this operator were computed with; absent or null: none were. */
  newestTzdb?: string | null;
  preset: PresetName | Preset;
  /** Own values for counting, where they differ from the preset. */
  counting?: Partial<CountingSettings>;
  /** Minutes between log and entry from which a reason is asked. */
  lateAfterMinutes: number;
  concurrenceNeeded: boolean;
  changeOfRow: 'keep-earliest' | 'own-window';
  /** Which record starts the window of a row that relieves several units at once. */
  pairDayZero: 'last-record' | 'first-record';
  /** Reference of the approved procedure for extensions; null when the operator holds none. */
  extensionProcedure: string | null;
  /** Systems (ATA chapter, two digits) and MEL entries whose work a second person inspects. */
  inspectionList: readonly string[];
  /** May one of those who did the work inspect it in an unforeseen case, with the reason recorded? */
  ownInspection: 'when-unforeseen' | 'never';
}

/** Settings to start from: the stricter one wherever there is a choice. */
export const DEFAULT_SETTINGS: Omit<DeferralSettings, 'base' | 'tzdb'> = {
  preset: 'easa',
  lateAfterMinutes: 60,
  concurrenceNeeded: false,
  changeOfRow: 'keep-earliest',
  pairDayZero: 'last-record',
  extensionProcedure: null,
  inspectionList: [],
  ownInspection: 'never',
};

/** Something left on the same aircraft, and what it belongs to there. */
export interface LeftElsewhere {
  item: LeftItem;
  /** Null when nobody knows. */
  owner: Owner | null;
}

export interface Context {
  /** The instant of entry, ISO 8601 with offset. Take it from one clock for all servers. */
  now: string;
  settings: DeferralSettings;
  /** What is left on the same aircraft under other owners than the one that acts. */
  elsewhere: readonly LeftElsewhere[];
}

/** A row looked up in the revision of the MEL that is in force for this aircraft. */
export interface RowOffered {
  document: string;
  revision: string;
  entry: Entry;
  subEntry: SubEntry;
  row: Row;
  /** Rows that it can bring along. */
  brings?: BroughtRow[];
}

export interface BasisContext extends Context {
  /** The row that was asked for; null when the MEL has no such row for this aircraft. */
  offered: RowOffered | null;
  /** The other defects of the same aircraft, open and closed. */
  others: readonly DefectLife[];
  /** What was used since this defect was deferred; absent counters are not known. */
  used: Used;
}

/** What every command carries. */
export interface Command<By extends Actor | Signature = Signature> {
  /** Identity for the act. */
  id: string;
  by: By;
  occurredAt?: string;
  /** When it was written in the log; absent: now. */
  recordedAt?: string;
  lateReason?: string;
}

/** The part that every act takes over from its command. Throws Refusal when a late entry has no reason. */
export function headOf<By extends Actor | Signature>(
  command: Command<By>,
  { now, settings }: Context,
): Times & { id: string; by: By } {
  const times: Times = {
    ...(command.occurredAt === undefined ? {} : { occurredAt: command.occurredAt }),
    recordedAt: command.recordedAt ?? now,
    enteredAt: now,
    ...(command.lateReason === undefined ? {} : { lateReason: command.lateReason }),
  };
  needLateReason(times, settings.lateAfterMinutes);
  return { id: command.id, by: command.by, ...times };
}
