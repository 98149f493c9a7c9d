/** What a search for savers works with: the plan that breaks, and a way to fly it again with something changed. */
import type { PlannedFlight } from '../../situation.js';
import { maintenanceAt, sayStation, type Stops } from '../at-stop.js';
import type { JudgedPlan } from '../best-plan.js';
import type { Budget, Change, Leg } from '../fly-plan.js';
import { groundBefore } from '../ground-before.js';
import type { Stop } from '../next-flights.js';
import { searchPlans } from '../search-plans.js';

export interface Saving {
  stops: Stops;
  flights: readonly PlannedFlight[];
  plan: JudgedPlan;
  budget: Budget;
}

/** Null when the flight that broke still breaks, or one before it does, or the budget is used up. */
export async function flyAgain(
  { stops, flights, plan, budget }: Saving,
  change: Change,
  changedFlights: readonly PlannedFlight[] = flights,
): Promise<JudgedPlan | null> {
  if (budget.left <= 0) return null;
  const { best } = await searchPlans(stops, plan.start, changedFlights, { budget, change });
  const broken = changedFlights.findIndex(({ id }) => id === plan.legs[plan.p]?.flight.id);
  return best.p > broken ? best : null;
}

/** More stops than that are not gone through; the latest are looked at first. */
const MOST_STOPS = 6;

/** Indexes of the stops up to the broken flight where somebody may do maintenance, the latest first. */
export function stopsBefore({ stops, plan }: Saving, last: number): number[] {
  const indexes = plan.legs.slice(0, last + 1).flatMap((leg, index) => (canWork(stops, leg) ? [index] : []));
  return indexes.toReversed().slice(0, MOST_STOPS);
}

function canWork(stops: Stops, { frame, flight }: Leg): boolean {
  const maintenance = maintenanceAt(stops, frame.situation, flight);
  return maintenance === undefined || maintenance === true;
}

export function stopAt({ plan }: Saving, index: number, minutes: number | null): Stop {
  const leg = plan.legs[index]!;
  const groundMinutes = groundBefore(leg);
  return {
    station: leg.flight.from,
    beforeFlight: leg.flight.id,
    groundMinutes,
    fits: minutes === null ? null : minutes <= groundMinutes,
  };
}

/** The stops said in a sentence; all of them are listed beside it. */
const MOST_SAID = 3;

/** e.g. "at Northmere before 101, or at Saltby before 102" */
export function sayStops({ plan, stops: { names } }: Saving, stops: readonly Stop[]): string {
  const said = stops.slice(0, MOST_SAID).map(({ station, beforeFlight }) => {
    const leg = plan.legs.find(({ flight }) => flight.id === beforeFlight);
    return `at ${sayStation({ names }, station)} before ${leg === undefined ? beforeFlight : sayFlight(leg.flight)}`;
  });
  const more = stops.length - said.length;
  return `${said.join(', or ')}${more > 0 ? `, or at ${more} earlier stop${more === 1 ? '' : 's'}` : ''}`;
}

export function sayFlight({ number, id }: PlannedFlight): string {
  return number ?? id;
}

/** The item by its title and unit, as people call it; the defect's id where no entry is about it. */
export function sayDefect({ plan }: Saving, id: string): string {
  const items = plan.legs[0]?.judged?.groups.flatMap((group) => group.items) ?? [];
  const found = items.find(({ item }) => item.defect?.id === id);
  return found === undefined || found.item.entry === null ? id : `${found.answer.title} ${found.answer.unit}`;
}
