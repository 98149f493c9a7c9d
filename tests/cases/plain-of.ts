/** Translates a case into the shapes of the oracles. It is no part of them: it takes over what was given, and judges nothing. */
import type { Situation } from '#dispatch';
import type { Mel } from '#mel';
import type { PlainCase } from './oracles/plain-case.js';

/** With `recorded`, each defect stays under its row, as where a situation is judged and not proposed for. */
export function plainOf(mel: Mel, situation: Situation, rows: 'any' | 'recorded' = 'any'): PlainCase {
  const { aircraft, defects, facts, flight, work, judgements, directives, gates, settings } = situation;
  const given = Object.entries({ ...facts, ...flight?.facts });
  return {
    entries: mel.content.entries,
    // Sub-entries of random cases are called after the configuration that they are for.
    fitted: aircraft.configuration?.[0]?.toLowerCase() ?? null,
    defects: defects.map(({ id, entry, units, row, signed }) => ({ id, entry: entry ?? '', units, row, signed })),
    ...(rows === 'recorded' ? { isRowFixed: true as const } : {}),
    facts: Object.fromEntries(
      given.map(([key, fact]) => [key, typeof fact === 'object' && fact !== null ? fact.value : fact]),
    ),
    work,
    judgements,
    directives,
    unanswered: gates.unanswered.length,
    combinationAsked: settings.combinationNeedsAcceptance,
  };
}
