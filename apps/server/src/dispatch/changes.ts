/** A change that is tried: nothing of it is stored, and the answer says what would be, not what is. */
import type { OpenDefect, Situation } from '#dispatch';
import { type Mel, readFactKey, slipOf } from '#mel';
import { Problem } from '../http/problem.js';

export interface Changes {
  /** Open defects taken as fixed, with what they left on the aircraft put back. */
  fix: readonly string[];
  /** Items taken as failed; without a row the best one is looked for. */
  broken: readonly { entry: string; units: string[]; row?: string }[];
  facts: readonly { key: string; value: string | number | boolean }[];
}

export const NO_CHANGES: Changes = { fix: [], broken: [], facts: [] };

/** What was not sent is no change. */
export function changesOf({ changes }: { changes?: Partial<Changes> }): Changes {
  return { fix: changes?.fix ?? [], broken: changes?.broken ?? [], facts: changes?.facts ?? [] };
}

const NOTHING_USED = {
  flights: 0,
  flightDays: 0,
  lastFlightDayOn: null,
  flightMinutes: 0,
  blockMinutes: 0,
  cycles: 0,
} as const;

/** @throws Problem naming what in the changes cannot be */
export function changed(situation: Situation, { broken, facts }: Changes, mel: Mel): Situation {
  const failed = broken.map((one, index): OpenDefect => {
    refuseUnlessFitted(one, index, mel, situation);
    const { entry, units, row = null } = one;
    const own = { entry, units, row, signed: false, rowAsked: row !== null };
    return { id: `tried-${index + 1}`, ...own, recordedAt: situation.at, used: NOTHING_USED };
  });
  const supposed = facts.map(({ key, value }, index) => {
    refuseUnlessFact(key, value, index);
    return [key, { value, source: 'tried' }] as const;
  });
  const own = situation.flight?.facts ?? {};
  const keys = supposed.map(([key]) => key);
  const kept = Object.entries(own).filter(([key]) => !keys.includes(key));
  return {
    ...situation,
    flight: situation.flight === null ? null : { ...situation.flight, facts: Object.fromEntries(kept) },
    facts: { ...situation.facts, ...Object.fromEntries(supposed) },
    defects: [...situation.defects, ...failed],
  };
}

function refuseUnlessFitted(
  { entry, units }: Changes['broken'][number],
  index: number,
  mel: Mel,
  { aircraft }: Situation,
): void {
  const match = mel.matchSubEntry(entry, aircraft);
  if (match.kind === 'none')
    throw refused(`/changes/broken/${index}/entry`, `${entry} is not in this MEL for this aircraft`);
  const fitted = match.kind === 'one' ? match.subEntry.units : match.candidates.flatMap((one) => one.units);
  const strange = units.find((unit) => !fitted.includes(unit));
  if (strange !== undefined) {
    throw refused(`/changes/broken/${index}/units`, `${entry} has no unit ${strange}; it has ${fitted.join(', ')}`);
  }
}

function refuseUnlessFact(key: string, value: string | number | boolean, index: number): void {
  const known = readFactKey(key);
  if (known?.fact.family !== 'flight') throw refused(`/changes/facts/${index}/key`, `${key} is no fact of a flight`);
  const misfit = slipOf(known.fact, value);
  if (misfit !== null) throw refused(`/changes/facts/${index}/value`, misfit);
}

function refused(pointer: string, reason: string): Problem {
  return new Problem('invalid-input', reason, { errors: [{ pointer, reason }] });
}
