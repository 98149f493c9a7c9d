import { millisOf } from '../frame/moment.js';
import type { Leg } from './fly-plan.js';

/** Minutes between the aircraft's arrival (or now) and the planned off-block, whole, never below 0. */
export function groundBefore({ frame, flight }: Leg): number {
  const minutes = (millisOf('offBlockAt', flight.offBlockAt) - frame.at) / 60_000;
  return Math.max(0, Math.floor(minutes));
}
