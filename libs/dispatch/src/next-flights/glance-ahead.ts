/**
 * The next flights of an aircraft at a glance, by the compiled evaluator alone: which are kept, and which breaks first. For
 * a whole fleet on one page; whoever opens an aircraft gets `nextFlights`, with reasons and the rules engine's word.
 */
import type { Mel } from '#mel';
import { verdictOf, type Bound } from '../bounds.js';
import type { PlannedFlight, Situation } from '../situation.js';
import type { VerdictCode } from '../verdict.js';
import { stopsOf } from './at-stop.js';
import type { NextFlightsOptions } from './next-flights.js';
import { searchPlans } from './search-plans.js';

export interface GlanceAhead {
  flights: { flight: string; verdict: VerdictCode; lo: Bound; hi: Bound }[];
  /** Leading flights known to be kept, and those that may be kept if the unknown turns out well. */
  kept: number;
  possible: number;
  /** False when the budget ended the search for a better plan. */
  shownBest: boolean;
}

/** Throws IntervalInputError when an instant or a stored interval cannot be read. */
export async function glanceAhead(
  mel: Mel,
  situation: Situation,
  flights: readonly PlannedFlight[],
  { stations = [], rows = 'recorded', budget }: Pick<NextFlightsOptions, 'stations' | 'rows' | 'budget'> = {},
): Promise<GlanceAhead> {
  const stops = stopsOf(mel, situation, stations);
  const left = { left: budget ?? situation.settings.budget };
  const { best, possible, whole } = await searchPlans(stops, situation, flights, { budget: left, rows });
  return {
    flights: best.legs.map(({ flight, lo, hi, frame, gates }) => {
      const isClear = frame.defects.length === 0 && gates.every(({ answer }) => answer.now === 'T');
      return { flight: flight.id, verdict: isClear ? 'nothing-open' : verdictOf(lo, hi), lo, hi };
    }),
    kept: best.p,
    possible,
    shownBest: whole,
  };
}
