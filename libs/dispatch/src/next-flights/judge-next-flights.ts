/**
 * May the aircraft fly what is planned for it, flight by flight; which flight breaks first; and what would save it?
 */
import type { Mel } from '#mel';
import { highest, lowest } from '../bounds.js';
import { conditionsOf, EvaluatorsDisagree } from '../evaluators-disagree.js';
import { Frame } from '../frame/frame.js';
import { judgeGates } from '../gates.js';
import { answerFrom } from '../judge.js';
import { search } from '../search.js';
import type { PlannedFlight, Situation } from '../situation.js';
import type { Verdict } from '../verdict.js';
import { stopsOf } from './at-stop.js';
import type { JudgedPlan } from './best-plan.js';
import { changedSince } from './changed.js';
import { judgeUnder, type Budget, type Leg } from './fly-plan.js';
import type { Break, NextFlight, NextFlights, NextFlightsOptions } from './next-flights.js';
import { flightShown } from './flight-shown.js';
import { groundBefore } from './ground-before.js';
import { repeatsOwed } from './repeats.js';
import { saversOf } from './savers/savers.js';
import { searchPlans } from './search-plans.js';
import { leftAt } from './what-is-left.js';

const SAVING_BUDGET = 2_000;

/**
 * The flights are judged in the order given; the flight of the situation itself is not looked at.
 * Throws IntervalInputError when an instant or a stored interval cannot be read, and EvaluatorsDisagree.
 */
export async function nextFlights(
  mel: Mel,
  situation: Situation,
  flights: readonly PlannedFlight[],
  options: NextFlightsOptions = {},
): Promise<NextFlights> {
  const stops = stopsOf(mel, situation, options.stations ?? [], options.stationNames);
  const budget: Budget = { left: options.budget ?? situation.settings.budget };
  const { rows = 'recorded' } = options;
  const { best, possible, whole } = await searchPlans(stops, situation, flights, { budget, rows });
  const told: NextFlight[] = [];
  for (const index of best.legs.keys()) told.push(await tell(mel, best, index));
  const breaks = breakOf(told[best.p]);
  const saving: Budget = { left: options.savingBudget ?? SAVING_BUDGET };
  const savers = breaks === null ? [] : await saversOf({ stops, flights, plan: best, budget: saving });
  return {
    flights: told,
    kept: best.p,
    possible,
    breaks,
    savers,
    saversComplete: saving.left > 0,
    rows: rowsOf(best),
    shownBest: whole,
  };
}

async function tell(mel: Mel, { legs, p }: JudgedPlan, index: number): Promise<NextFlight> {
  const leg = legs[index]!;
  const verdict = await judgedByEngine(mel, leg);
  const groundMinutes = groundBefore(leg);
  return {
    flight: flightShown(leg.flight),
    verdict,
    ifFlown: index > p ? (legs[p]?.flight.id ?? null) : null,
    groundMinutes,
    lateMinutes: verdict.lateMinutes,
    left: leftAt(leg),
    repeats: repeatsOwed(leg, groundMinutes),
    changed: changedSince(legs[index - 1], leg),
  };
}

/**
 * What is shown is the rules engine's answer under this one choice; where the defects can be read in too many ways, what
 * a search can still say. Throws EvaluatorsDisagree when the engine says otherwise than the search did.
 */
async function judgedByEngine(mel: Mel, { frame: { situation }, judged, lo, hi }: Leg): Promise<Verdict> {
  const frame = new Frame(mel, situation);
  const gates = judgeGates(frame);
  const again = judged === null ? null : await judgeUnder(frame, gates, judged.choice.considered);
  if (again === null) return answerFrom(frame, gates, await search(frame, gates));
  if (lowest(again) !== lo || highest(again) !== hi) {
    throw new EvaluatorsDisagree(situation, [
      { way: 'the rules engine', lo: lowest(again), hi: highest(again), conditions: conditionsOf(again) },
      { way: 'the compiled form', lo, hi, conditions: judged && conditionsOf(judged) },
    ]);
  }
  return answerFrom(frame, gates, { best: again, lo, hi, kept: [again], keptAll: true, stopped: null });
}

function breakOf(told: NextFlight | undefined): Break | null {
  if (told === undefined) return null;
  const { flight, verdict } = told;
  return { flight: flight.id, station: flight.from, verdict: verdict.verdict, because: verdict.reasons };
}

function rowsOf({ legs: [first] }: JudgedPlan): NextFlights['rows'] {
  const items = first?.judged?.groups.flatMap((group) => group.items) ?? [];
  return items.map(({ item, answer }) => ({
    entry: answer.entry,
    unit: answer.unit,
    row: answer.row,
    signed: item.defect?.signed ?? true,
  }));
}
