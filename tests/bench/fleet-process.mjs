/**
 * A fleet judged in a process of its own, so that its memory is its own. Prints one JSON line. When its seconds are over
 * it stops, and says how many aircraft it had come to.
 */
import { compileAll, glanceAhead } from '#dispatch';
import { loadMel } from '#mel';
import { aircraft, day, everydayMel } from './reasoning-mel.mjs';

const [size = 1000, defects = 6, flights = 8, seconds = 60] = process.argv.slice(2).map(Number);
const { mel } = loadMel(everydayMel(60, 3), 'bench');
compileAll(mel);

const fleet = Array.from({ length: size }, (_, index) => ({
  situation: aircraft(mel, defects, index + 1),
  flights: day(flights, index),
}));
const glances = new Map();
const judge = async ({ situation, flights: ahead }) => {
  const glance = await glanceAhead(mel, situation, ahead);
  glances.set(situation.aircraft.registration, glance);
};

// Once over a few, so that what is measured is the work and not the compiler of the machine.
for (const one of fleet.slice(0, 20)) await judge(one);
glances.clear();

const usedBefore = process.cpuUsage();
const start = performance.now();
let reached = 0;
for (const one of fleet) {
  if (performance.now() - start > seconds * 1000) break;
  await judge(one);
  reached += 1;
}
const whole = performance.now() - start;
const used = process.cpuUsage(usedBefore);

const changes = [];
for (let change = 0; change < 25; change += 1) {
  const one = fleet[(change * 37) % fleet.length];
  const rectified = { ...one.situation, defects: one.situation.defects.slice(1) };
  const before = performance.now();
  await judge({ ...one, situation: rectified });
  changes.push(performance.now() - before);
}
const kept = [...glances.values()].reduce((sum, glance) => sum + glance.kept, 0);
console.log(
  JSON.stringify({
    size,
    reached,
    whole,
    processor: (used.user + used.system) / 1000,
    changes,
    kept,
    flights: reached * flights,
    peakKiB: process.resourceUsage().maxRSS,
  }),
);
