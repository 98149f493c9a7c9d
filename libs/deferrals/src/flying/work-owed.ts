/**
 * What the basis in force demands and is not in place: each procedure signed under this basis, with what it left on the
 * aircraft still there; and its placard fitted. ORO.MLR.105; 14 CFR 121.628.
 *
 * Here a procedure counts once it was done; when it is owed again is asked with the flight.
 */
import type { Procedure } from '#mel';
import type { DefectLife, ProcedureDone } from '../defect-life.js';
import { proceduresOwed } from '../deferring/procedures-owed.js';
import { before } from '../instant.js';
import { placardsFitted } from '../leaving/fit-placard.js';
import { reason, type Reason } from '../refusal.js';

/** The flight that is asked about; absent: any. */
export interface FlightAsked {
  id: string;
  offBlockAt: string;
}

export function workOwed(life: DefectLife, flight?: FlightAsked): Reason[] {
  if (life.deferral === null) return [];
  const { basis } = life.deferral;
  const undoneWork = proceduresOwed(basis)
    .filter(({ procedure }) => !isAfterFirstFlight(procedure))
    .filter(
      ({ work, procedure }) =>
        !life.procedures.some((done) => done.work === work && counts(life, done, procedure, flight)),
    )
    .map(({ work }) => reason('procedure-not-signed', { work }));
  const { placard } = basis;
  if (placard === undefined || placardsFitted(life).includes(placard.text)) return undoneWork;
  return [...undoneWork, reason('placard-not-fitted', placard)];
}

function counts(
  life: DefectLife,
  done: ProcedureDone,
  { repeat }: Procedure,
  flight: FlightAsked | undefined,
): boolean {
  const inPlace = done.leaves.every(({ id }) => life.left.some((item) => item.id === id));
  if (!inPlace || flight === undefined) return inPlace;
  if (done.validUntil !== null && !before(flight.offBlockAt, done.validUntil)) return false;
  if (done.forFlight !== null) return done.forFlight === flight.id;
  return repeat === undefined || repeat === 'once' || (repeat !== 'each-departure' && done.validUntil !== null);
}

/** Owed only once the aircraft has flown with the item open. */
function isAfterFirstFlight({ repeat }: Procedure): boolean {
  return typeof repeat === 'object' && 'afterFirstFlightThenEvery' in repeat;
}
