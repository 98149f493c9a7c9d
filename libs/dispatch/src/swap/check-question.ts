import { byCode } from '../units/unit.js';
import { millisOf } from '../frame/moment.js';
import type { SwapQuestion } from './rotation.js';
import { SwapInputError } from './swap-input-error.js';

/**
 * Refuses a question that names something twice, a rotation without flights or out of order, and an aircraft that stands
 * nowhere. Throws SwapInputError, and IntervalInputError for an instant that is none.
 */
export function checkQuestion({ aircraft, rotations }: SwapQuestion): void {
  once(
    'aircraft',
    aircraft.map(({ id }) => id),
  );
  once(
    'rotation',
    rotations.map(({ id }) => id),
  );
  once(
    'flight',
    rotations.flatMap(({ flights }) => flights.map(({ id }) => id)),
  );
  once(
    'aircraft with a planned rotation',
    rotations.map(({ planned }) => planned),
  );
  const standing = new Set(aircraft.map(({ id }) => id));
  for (const { id, readyAt } of aircraft) millisOf(`aircraft "${id}".readyAt`, readyAt);
  for (const { id, planned, flights } of rotations) {
    if (!standing.has(planned)) {
      throw new SwapInputError(`Rotation "${id}" is planned for "${planned}", of which nobody says where it stands.`);
    }
    if (flights.length === 0) throw new SwapInputError(`Rotation "${id}" has no flight.`);
    flights.reduce((before, flight) => {
      if (millisOf('offBlockAt', flight.offBlockAt) < millisOf('offBlockAt', before.offBlockAt)) {
        throw new SwapInputError(`In rotation "${id}" flight "${flight.id}" leaves before flight "${before.id}".`);
      }
      return flight;
    });
  }
}

function once(what: string, ids: readonly string[]): void {
  const sorted = [...ids].sort(byCode);
  const again = sorted.find((id, index) => id === sorted[index - 1]);
  if (again !== undefined) throw new SwapInputError(`The ${what} "${again}" is named twice.`);
}
