/** The work signed for a defect, as the reasoner takes it. */
import {
  actsAsCorrected,
  type DefectLife,
  placardsFitted,
  proceduresBrought,
  proceduresOwed,
  rowsBroughtBy,
} from '#deferrals';
import type { WorkState } from '#dispatch';
import type { CountingSettings, Leg } from '#intervals';
import { workKey } from '#mel';
import { usedSince } from './flown.js';

export function workDone(
  life: DefectLife,
  legs: readonly Leg[],
  counting: { base: string; tzdb: string; counting?: Partial<CountingSettings> },
): WorkState[] {
  const basis = life.deferral?.basis;
  const owed = basis ? [...proceduresOwed(basis), ...rowsBroughtBy(basis).flatMap(proceduresBrought)] : [];
  const procedures: WorkState[] = life.procedures.map((done) => {
    const repeat = owed.find(({ work }) => work === done.work)?.procedure.repeat;
    const used = usedSince(repeat, done.doneAt, legs, counting);
    return {
      work: done.work,
      defect: life.defect,
      doneAt: done.doneAt,
      by: done.by.name,
      ...(done.validUntil === null ? {} : { validUntil: done.validUntil }),
      ...(done.forFlight === null ? {} : { forFlight: done.forFlight }),
      ...(used ? { usedSince: used } : {}),
    };
  });
  return [...procedures, ...placardsDone(life)];
}

/** Placards of the row and of the rows it brings along, told by their text. */
function placardsDone(life: DefectLife): WorkState[] {
  const basis = life.deferral?.basis;
  if (basis?.kind !== 'mel-row') return [];
  const texts = placardsFitted(life);
  const acts = actsAsCorrected(life);
  return [basis, ...rowsBroughtBy(basis)].flatMap(({ entry, row, placard }) => {
    if (placard === undefined || !texts.includes(placard.text)) return [];
    const fitted = acts.findLast((act) => act.kind === 'placard-fitted' && act.text === placard.text);
    const done = { work: workKey(entry, row, 'placard'), defect: life.defect };
    return fitted ? [{ ...done, doneAt: fitted.enteredAt, by: fitted.by.name }] : [done];
  });
}
