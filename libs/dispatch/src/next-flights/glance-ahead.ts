/**
 * The next flights of an aircraft at a glance, by the compiled evaluator alone: which are kept, and which breaks first. For
 * a whole fleet on one page; whoever opens an aircraft gets `nextFlights`, with reasons and the rules engine's word.
 */
import type { Mel } from '#mel';
import { BOUNDS, verdictOf, type Bound } from '../bounds.js';
import { highRank, lowRank, pairOf } from '../compiled/code.js';
import { allOfPairs } from '../kleene.js';
import type { PlannedFlight, Situation } from '../situation.js';
import type { NowAfter, VerdictCode } from '../verdict.js';
import { stopsOf } from './at-stop.js';
import type { FlownByValue } from './fly-by-value.js';
import type { Leg } from './fly-plan.js';
import type { NextFlightsOptions } from './next-flights.js';
import { searchByValue } from './search-by-value.js';
import { searchInFull } from './search-plans.js';

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
  const searching = { budget: { left: budget ?? situation.settings.budget }, rows };
  const found = searchByValue(stops, situation, flights, searching);
  const { best, possible, whole } = found ?? (await searchInFull(stops, situation, flights, searching));
  return {
    flights: 'values' in best ? best.values.map(byValue) : best.legs.map(told),
    kept: best.p,
    possible,
    shownBest: whole,
  };

  function byValue({ value, gates }: FlownByValue, at: number) {
    return said(flights[at]!, BOUNDS[lowRank(value)]!, BOUNDS[highRank(value)]!, pairOf(gates));
  }

  function told({ flight, lo, hi, gates }: Leg) {
    return said(flight, lo, hi, allOfPairs(gates.map(({ answer }) => answer)));
  }

  function said({ id }: PlannedFlight, lo: Bound, hi: Bound, gates: NowAfter) {
    const isClear = situation.defects.length === 0 && gates.now === 'T';
    return { flight: id, verdict: isClear ? ('nothing-open' as const) : verdictOf(lo, hi), lo, hi };
  }
}
