import type { Situation } from '../../situation.js';
import { doneFor } from '../fly-on.js';
import type { Saver } from '../next-flights.js';
import { blockedWork, minutesOfBlocked, sayWork, type BlockedWork } from './blocked-work.js';
import { flyAgain, sayStops, stopAt, stopsBefore, type Saving } from './saving.js';

/** The work that cannot be done before the broken flight is done at an earlier stop, where it stays good as long as it may. */
export async function earlierWork(saving: Saving): Promise<Saver[]> {
  const { plan, flights } = saving;
  const broken = plan.legs[plan.p]!;
  const blocked = blockedWork(broken);
  if (blocked.length === 0) return [];
  const minutes = minutesOfBlocked(blocked);
  const stops = [];
  let keeps = 0;
  for (const index of stopsBefore(saving, plan.p - 1)) {
    if (!isDueFrom(blocked, plan.legs[index]!.frame.situation)) continue;
    const records = blocked.map((work) => doneFor(flights[index]!, work));
    const flown = await flyAgain(saving, (before, at) =>
      at === index ? { ...before, work: [...before.work, ...records] } : before,
    );
    if (flown === null) continue;
    stops.push(stopAt(saving, index, minutes));
    keeps = Math.max(keeps, flown.p);
  }
  if (stops.length === 0) return [];
  const work = blocked.map((one) => one.work);
  const text = `Do it earlier, ${sayStops(saving, stops)}: ${sayWork(blocked)}.`;
  return [{ kind: 'do-work', text, size: 1, minutes, stops, work, keeps }];
}

/** What is owed after the first flight cannot be done before it. */
export function isDueFrom(blocked: readonly BlockedWork[], { defects }: Situation): boolean {
  return blocked.every(({ afterFirstFlight, defect }) => {
    const flights = defects.find(({ id }) => id === defect)?.used?.flights ?? 0;
    return !afterFirstFlight || flights > 0;
  });
}
