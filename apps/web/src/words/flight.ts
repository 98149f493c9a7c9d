import type { Schemas } from '../api/client.js';
import { utcBeside } from './time.js';

type Flight = Schemas['FlightLine'];

/** `QOF 108, Hathing Moor to Vorrel Field` */
export function flightName({ number, fromName, toName }: Flight): string {
  return `${number}, ${fromName} to ${toName}`;
}

/** `25 Nov 08:40 local (08:40 UTC)`: the clock at the station it leaves. */
export function offBlocks({ offBlockAt, offBlockLocal }: Flight): string {
  return `${offBlockLocal} local (${utcBeside(offBlockAt, 'UTC')})`;
}
