/** A year of movement messages through the reader, held against an independent count; rate and peak memory. */
import { readFileSync } from 'node:fs';
import { isDeepStrictEqual } from 'node:util';
import { readMovements } from '#movements';
import { rate } from './measure.mjs';
import { yearOfMovements } from './year-of-movements.mjs';

const AIRCRAFT = 200;
const DAYS = 365;

export function movements() {
  const { transmissions, counters, garbage, corrected } = yearOfMovements({ aircraft: AIRCRAFT, days: DAYS });
  const started = performance.now();
  const used = process.cpuUsage();
  const read = readMovements(transmissions);
  const seconds = (performance.now() - started) / 1000;
  const { user, system } = process.cpuUsage(used);
  const busy = (user + system) / 1_000_000;
  const right = isDeepStrictEqual(read.counters, counters) && read.tray.length === garbage;
  return [
    `${rate(transmissions.length)} messages of ${AIRCRAFT} aircraft in ${DAYS} days (${corrected} corrected, ${garbage} garbage)`,
    `${rate(transmissions.length / seconds)} messages/s through the reader (${seconds.toFixed(1)} s); ${rate(transmissions.length / busy)} for each second of processor time`,
    `counters and tray ${right ? 'equal' : 'DIFFER FROM'} the independent count`,
    `peak memory of the process, messages and legs of the whole year at once: ${peakMiB()} MiB`,
  ];
}

export function peakMiB() {
  const status = readFileSync('/proc/self/status', 'utf8');
  return Math.round(Number(/VmHWM:\s+(\d+)/.exec(status)?.[1]) / 1024);
}
