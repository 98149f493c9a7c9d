/**
 * A year of movement messages: through the reader as they come in, held against an independent count, with peak memory;
 * and so many of them stored by the server in its own database, with one correction of an old leg after them.
 */
import { readFileSync } from 'node:fs';
import { isDeepStrictEqual } from 'node:util';
import { CountingLegs, readMovementsInParts } from '#movements';
import { rate } from './measure.mjs';
import { storing } from './storing.mjs';
import { movementsByDay } from './year-of-movements.mjs';

const AIRCRAFT = 200;
const DAYS = 365;
const SETTINGS = { base: 'UTC', rampReturnMakesFlightDay: false };

/** @param days of the year; @param stored how many days of it go through the server */
export async function movements(days = DAYS, stored = 3) {
  return [...reading(days), ...(await storing({ aircraft: AIRCRAFT, days: stored }))];
}

function reading(days) {
  const truth = {};
  const clock = stopwatch();
  let messages = 0;
  const arriving = function* () {
    for (const day of clock.without(movementsByDay({ aircraft: AIRCRAFT, days, truth }))) {
      messages += day.length;
      yield* day;
    }
  };
  const counting = new CountingLegs(SETTINGS);
  let tray = 0;
  clock.start();
  for (const part of readMovementsInParts(arriving(), SETTINGS)) {
    counting.add(part.legs);
    tray += part.tray.length;
  }
  const { seconds, busy } = clock.stop();
  const right = isDeepStrictEqual(counting.counters(), truth.counters) && tray === truth.garbage;
  return [
    `${rate(messages)} messages of ${AIRCRAFT} aircraft in ${days} days (${truth.corrected} corrected, ${truth.garbage} garbage)`,
    `${rate(messages / seconds)} messages/s through the reader (${seconds.toFixed(1)} s; aim 5,000); ${rate(messages / busy)} for each second of processor time`,
    `counters and tray ${right ? 'equal' : 'DIFFER FROM'} the independent count`,
    `peak memory of the process, which reads them as they come: ${peakMiB()} MiB`,
  ];
}

/** Time and processor time, without what writing the messages takes. */
function stopwatch() {
  let [seconds, busy] = [0, 0];
  let begun = now();
  const lap = () => {
    const { at, cpu } = now();
    seconds += at - begun.at;
    busy += cpu - begun.cpu;
  };
  return {
    start: () => (begun = now()),
    stop: () => (lap(), { seconds, busy }),
    *without(parts) {
      for (;;) {
        lap();
        const { value, done } = parts.next();
        begun = now();
        if (done) return;
        yield value;
      }
    },
  };
}

function now() {
  const { user, system } = process.cpuUsage();
  return { at: performance.now() / 1000, cpu: (user + system) / 1_000_000 };
}

export function peakMiB() {
  const status = readFileSync('/proc/self/status', 'utf8');
  return Math.round(Number(/VmHWM:\s+(\d+)/.exec(status)?.[1]) / 1024);
}
