import type { PlannedFlight } from '../../situation.js';
import type { Saver } from '../next-flights.js';
import { flyAgain, sayFlight, type Saving } from './saving.js';

/** Flights before the broken one are not flown: a run that begins and ends at the same station, so the rest stands. */
export async function legsLeftOut(saving: Saving): Promise<Saver[]> {
  const { flights } = saving;
  const found: Saver[] = [];
  for (const run of runsLeftOut(saving)) {
    const size = run.length;
    if (found.some((one) => one.size < size)) break;
    const left = flights.filter((flight) => !run.includes(flight));
    const flown = await flyAgain(saving, (before) => before, left);
    if (flown === null) continue;
    const ids = run.map(({ id }) => id);
    const text = `Do not fly ${run.map(sayFlight).join(' and ')}.`;
    found.push({ kind: 'leave-out', text, size, minutes: 0, stops: [], flights: ids, keeps: flown.p });
  }
  return found;
}

/** Runs of flights before the broken one that begin and end at the same station, by how many they are. */
export function runsLeftOut({ flights, plan }: Saving): PlannedFlight[][] {
  const runs: PlannedFlight[][] = [];
  for (let size = 1; size <= plan.p; size++) {
    for (let first = 0; first + size <= plan.p; first++) {
      const run = flights.slice(first, first + size);
      if (run[0]?.from === run.at(-1)?.to) runs.push(run);
    }
  }
  return runs;
}
