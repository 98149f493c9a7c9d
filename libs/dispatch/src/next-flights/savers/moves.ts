/** Single changes that may be made together: none of them need save anything by itself. */
import { rowsOfDefect, underRow } from '../../proposal/rows-of-defect.js';
import type { OpenDefect, PlannedFlight, Situation } from '../../situation.js';
import { byCode } from '../../units/unit.js';
import { maintenanceAt, PERSON, sayStation } from '../at-stop.js';
import { doneFor } from '../fly-on.js';
import type { SingleKind } from '../next-flights.js';
import { blockedWork, minutesOfBlocked, sayWork } from './blocked-work.js';
import { isDueFrom } from './do-work.js';
import { runsLeftOut } from './leave-out.js';
import { sayDefect, sayFlight, type Saving } from './saving.js';

export interface Move {
  kind: SingleKind;
  /** "fix Autopilot 1": where and when is said of all of them together. */
  words: string;
  /** How many changes it counts for. */
  size: number;
  /** Null when nobody has said; 0 where the work follows from the plan that is flown with it. */
  minutes: number | null;
  defects?: string[];
  row?: string;
  work?: string[];
  leaves?: readonly PlannedFlight[];
  /** What it changes at the stop before a flight; absent where it needs no stop. */
  atStop?: (before: Situation, flight: PlannedFlight) => Situation;
  /** False where it counts for nothing at that stop. */
  countsAt?: (before: Situation, isBroken: boolean) => boolean;
  /** What it changes in the plan itself. */
  planned?: (flights: readonly PlannedFlight[]) => readonly PlannedFlight[];
}

export function movesOf(saving: Saving): Move[] {
  return [...sent(saving), ...earlier(saving), ...fixed(saving), ...changedRows(saving), ...leftOut(saving)];
}

/** In one order, however they are written down. */
function defectsOf({ plan }: Saving): OpenDefect[] {
  return [...plan.start.defects].sort((a, b) => byCode(a.id, b.id));
}

function fixed(saving: Saving): Move[] {
  return defectsOf(saving).map(({ id, rectifyMinutes = null }) => ({
    kind: 'fix',
    words: `fix ${sayDefect(saving, id)}`,
    size: 1,
    minutes: rectifyMinutes,
    defects: [id],
    atStop: (before) => ({ ...before, defects: before.defects.filter((one) => one.id !== id) }),
  }));
}

function changedRows(saving: Saving): Move[] {
  return defectsOf(saving).flatMap((defect) =>
    rowsOfDefect(defect, saving.stops.fitted).flatMap((row): Move[] => {
      if (row === null || row === defect.row) return [];
      const { id, entry } = defect;
      const put = (before: Situation): Situation => ({
        ...before,
        defects: before.defects.map((one) => (one.id === id ? underRow(one, row) : one)),
      });
      const words = `change ${sayDefect(saving, id)} to row ${row} of ${entry ?? ''} and sign it with its work`;
      return [{ kind: 'change-row', words, size: 1, minutes: 0, defects: [id], row, atStop: put }];
    }),
  );
}

function earlier({ plan }: Saving): Move[] {
  const blocked = blockedWork(plan.legs[plan.p]!);
  if (blocked.length === 0) return [];
  return [
    {
      kind: 'do-work',
      words: `do earlier: ${sayWork(blocked)}`,
      size: 1,
      minutes: minutesOfBlocked(blocked),
      work: blocked.map(({ work }) => work),
      atStop: (before, flight) => ({
        ...before,
        work: [...before.work, ...blocked.map((one) => doneFor(flight, one))],
      }),
      countsAt: (before, isBroken) => !isBroken && isDueFrom(blocked, before),
    },
  ];
}

function sent({ plan, stops }: Saving): Move[] {
  const { flight, frame, ...rest } = plan.legs[plan.p]!;
  const blocked = blockedWork({ flight, frame, ...rest });
  if (blocked.length === 0 || maintenanceAt(stops, frame.situation, flight) === true) return [];
  const there = { value: true, source: 'somebody sent there' };
  return [
    {
      kind: 'send-person',
      words: `send somebody authorised and equipped to ${sayStation(stops, flight.from)} before ${sayFlight(flight)}`,
      size: 1,
      minutes: minutesOfBlocked(blocked),
      planned: (flights) =>
        flights.map((one) => (one.id === flight.id ? { ...one, facts: { ...one.facts, [PERSON]: there } } : one)),
    },
  ];
}

function leftOut(saving: Saving): Move[] {
  return runsLeftOut(saving).map((run) => ({
    kind: 'leave-out',
    words: `do not fly ${run.map(sayFlight).join(' and ')}`,
    size: run.length,
    minutes: 0,
    leaves: run,
    planned: (flights) => flights.filter((one) => !run.includes(one) && !run.some(({ id }) => id === one.id)),
  }));
}
