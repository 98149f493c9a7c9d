import { minutesOf, workOf } from '../../answer/work-list.js';
import { rowsOfDefect, underRow } from '../../proposal/rows-of-defect.js';
import type { OpenDefect } from '../../situation.js';
import type { JudgedPlan } from '../best-plan.js';
import type { Saver } from '../next-flights.js';
import { flyAgain, sayDefect, sayStops, stopAt, stopsBefore, type Saving } from './saving.js';

/** Another row of one defect, signed on the way: it stays in force for the flights after it. */
export async function rowChanges(saving: Saving): Promise<Saver[]> {
  const found: Saver[] = [];
  for (const defect of saving.plan.start.defects) {
    for (const row of rowsOfDefect(defect, saving.stops.fitted)) {
      if (row === null || row === defect.row) continue;
      const saver = await changing(saving, defect, row);
      if (saver !== null) found.push(saver);
    }
  }
  return found;
}

async function changing(saving: Saving, { id, entry }: OpenDefect, row: string): Promise<Saver | null> {
  const stops = [];
  let keeps = 0;
  let minutes: number | null = 0;
  for (const index of stopsBefore(saving, saving.plan.p)) {
    const flown = await flyAgain(saving, (before, at) =>
      at === index
        ? { ...before, defects: before.defects.map((one) => (one.id === id ? underRow(one, row) : one)) }
        : before,
    );
    if (flown === null) continue;
    if (stops.length === 0) minutes = minutesFor(flown, index, id);
    stops.push(stopAt(saving, index, minutesFor(flown, index, id)));
    keeps = Math.max(keeps, flown.p);
  }
  if (stops.length === 0) return null;
  const text = `Change ${sayDefect(saving, id)} to row ${row} of ${entry ?? ''} ${sayStops(saving, stops)}, and sign it with its work.`;
  return { kind: 'change-row', text, size: 1, minutes, stops, defects: [id], row, keeps };
}

/** Work that the changed row of a defect owes at a stop; null when the MEL gives no figure. */
export function minutesFor({ legs }: JudgedPlan, index: number, id: string): number | null {
  const judged = legs[index]?.judged ?? null;
  return judged === null ? null : minutesOf(workOf(judged).filter(({ defect }) => defect === id));
}
