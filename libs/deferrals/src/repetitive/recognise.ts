/**
 * A defect that keeps coming back. The operator says how many write-ups within how many days, flights or flight hours make
 * it repetitive, and by what they are held to be alike; the program finds them, and maintenance control decides.
 *
 * Resets and answers of "no fault found" count: they are how a defect comes back. A write-up raised in error does not, nor
 * one that was joined to an open item, which is that item seen again. AMC M.A.301 and 14 CFR 121.373 ask for the watching
 * and give no numbers (from memory).
 */
import type { Closing } from '../defect-life.js';

/** By what two write-ups are held to be alike. `position`: the same entry on the same unit. */
export type Likeness = 'entry' | 'position' | 'system' | 'message';

export interface RepetitiveRule {
  /** How many write-ups, the new one counted. */
  times: number;
  /** Each is a window of its own; null where the operator sets none. */
  within: { days: number | null; flights: number | null; flightMinutes: number | null };
  alikeBy: readonly Likeness[];
}

export interface WrittenLike {
  entry: string | null;
  subEntry: string | null;
  units: readonly string[];
  system: string | null;
  faultMessage: string | null;
}

/** A write-up before this one, and what lies between the two records. Counters that nobody knows are null. */
export interface Before extends WrittenLike {
  defect: string;
  /** How it ended; null while it is open. */
  how: Closing['how'] | null;
  ago: { days: number; flights: number | null; flightMinutes: number | null };
}

export interface Recurrence {
  defect: string;
  alikeBy: Likeness[];
  /** False where it is outside by what is known, and a counter that could bring it inside is not known. */
  certain: boolean;
}

export interface Recognised {
  /** With this write-up, in the order in which they were given. */
  times: number;
  repetitive: boolean;
  occurrences: Recurrence[];
}

const UNCOUNTED: readonly (Closing['how'] | null)[] = ['raised in error', 'joined to another'];

/** What is not known is held for inside: a repeat is shown once too often rather than missed. */
export function recognise(now: WrittenLike, before: readonly Before[], rule: RepetitiveRule): Recognised {
  const occurrences = before.flatMap((one) => {
    const alikeBy = UNCOUNTED.includes(one.how) ? [] : rule.alikeBy.filter((by) => isAlike(by, now, one));
    const inside = alikeBy.length === 0 ? 'no' : isWithin(one.ago, rule.within);
    return inside === 'no' ? [] : [{ defect: one.defect, alikeBy, certain: inside === 'yes' }];
  });
  const times = occurrences.length + 1;
  return { times, repetitive: times >= rule.times, occurrences };
}

function isAlike(by: Likeness, now: WrittenLike, before: WrittenLike): boolean {
  const sameEntry = now.entry !== null && now.entry === before.entry && now.subEntry === before.subEntry;
  switch (by) {
    case 'entry':
      return sameEntry;
    case 'position':
      return sameEntry && now.units.some((unit) => before.units.includes(unit));
    case 'system':
      return systemOf(now) !== null && systemOf(now) === systemOf(before);
    case 'message':
      return plain(now.faultMessage) !== '' && plain(now.faultMessage) === plain(before.faultMessage);
  }
}

/** The system (ATA chapter) that was written, else the one its entry begins with. */
function systemOf({ system, entry }: WrittenLike): string | null {
  return system ?? (entry === null ? null : entry.slice(0, 2));
}

const plain = (message: string | null): string => (message ?? '').trim().toLowerCase().replace(/\s+/g, ' ');

function isWithin(ago: Before['ago'], within: RepetitiveRule['within']): 'yes' | 'no' | 'perhaps' {
  const windows = (['days', 'flights', 'flightMinutes'] as const).filter((unit) => within[unit] !== null);
  const inside = windows.some((unit) => {
    const used = ago[unit];
    return used !== null && used <= (within[unit] ?? 0);
  });
  if (inside) return 'yes';
  return windows.some((unit) => ago[unit] === null) ? 'perhaps' : 'no';
}
