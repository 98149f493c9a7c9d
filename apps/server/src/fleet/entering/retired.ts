import type { AircraftRow } from '#store';
import { Problem } from '../../http/problem.js';

export function retired({ registration }: AircraftRow): Problem {
  return new Problem('aircraft-retired', `${registration} has left the fleet.`);
}
