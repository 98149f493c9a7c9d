/** A fleet judged in a process of its own, so that its memory is its own. Prints one JSON line. */
import { compileAll, glanceAhead } from '#dispatch';
import { loadMel } from '#mel';
import { aircraft, day, everydayMel } from './reasoning-mel.mjs';

const [size = 1000, defects = 6, flights = 8] = process.argv.slice(2).map(Number);
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

const start = performance.now();
for (const one of fleet) await judge(one);
const whole = performance.now() - start;

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
  JSON.stringify({ size, whole, changes, kept, flights: size * flights, peakKiB: process.resourceUsage().maxRSS }),
);
