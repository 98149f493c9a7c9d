import { leastToFix, type Repair } from '../../proposal/least-to-fix.js';
import type { Saver } from '../next-flights.js';
import { flyAgain, sayDefect, sayStops, stopAt, stopsBefore, type Saving } from './saving.js';

/** Larger sets of defects than that are not gone through; the answer then says that there may be others. */
const MOST_FIXED = 3;

/**
 * Sets of defects without which the flight can leave, none of which contains a smaller one. All subsets are gone through:
 * where a row needs an item down, a repair can make things worse, so nothing may be concluded from one set to another.
 */
export async function fixes(saving: Saving): Promise<Saver[]> {
  const { defects } = saving.plan.start;
  const ids = defects.map(({ id }) => id).sort();
  const found: Saver[] = [];
  for (const set of subsets(ids, Math.min(MOST_FIXED, ids.length))) {
    if (found.some((one) => one.defects?.every((id) => set.includes(id)))) continue;
    const saver = await fixing(saving, set);
    if (saver !== null) found.push(saver);
  }
  for (const { defects: set } of largerRepairs(saving)) {
    if (found.some((one) => one.defects?.every((id) => set.includes(id)))) continue;
    const saver = await fixing(saving, set);
    if (saver !== null) found.push(saver);
  }
  return found;
}

/** Repairs of the broken flight itself, looked for over all rows; whether one saves the plan, flying it again says. */
function largerRepairs({ plan, stops, budget }: Saving): Repair[] {
  const { situation } = plan.legs[plan.p]!.frame;
  if (situation.defects.length <= MOST_FIXED || budget.left <= 0) return [];
  const { repairs } = leastToFix(stops.mel, situation, { budget: budget.left });
  return repairs.filter(({ defects }) => defects.length > MOST_FIXED);
}

async function fixing(saving: Saving, set: readonly string[]): Promise<Saver | null> {
  const { plan } = saving;
  const fixed = plan.start.defects.filter(({ id }) => set.includes(id));
  const minutes = fixed.reduce<number | null>(
    (sum, { rectifyMinutes }) => (sum === null || rectifyMinutes === undefined ? null : sum + rectifyMinutes),
    0,
  );
  const stops = [];
  let keeps = 0;
  for (const index of stopsBefore(saving, plan.p)) {
    const flown = await flyAgain(saving, (before, at) =>
      at === index ? { ...before, defects: before.defects.filter(({ id }) => !set.includes(id)) } : before,
    );
    if (flown === null) continue;
    stops.push(stopAt(saving, index, minutes));
    keeps = Math.max(keeps, flown.p);
  }
  if (stops.length === 0) return null;
  const items = set.map((id) => sayDefect(saving, id));
  const text = `Fix ${items.join(' and ')} ${sayStops(saving, stops)}.`;
  return { kind: 'fix', text, size: set.length, minutes, stops, defects: [...set], keeps };
}

/** By size, then in the order given. */
function* subsets(ids: readonly string[], most: number): Generator<string[]> {
  for (let size = 1; size <= most; size++) yield* ofSize(ids, size);
}

function* ofSize(ids: readonly string[], size: number): Generator<string[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (const [at, id] of ids.entries()) for (const rest of ofSize(ids.slice(at + 1), size - 1)) yield [id, ...rest];
}
