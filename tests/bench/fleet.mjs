/** A fleet recomputed whole and after one change, in a process of its own that tells its peak memory. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { median } from './measure.mjs';

const program = fileURLToPath(new URL('fleet-process.mjs', import.meta.url));
/** So many seconds each size may take at most, that the whole part ends on a slow machine too. */
const SIZES = [
  [125, 5],
  [250, 10],
  [500, 15],
  [1000, 45],
];

function judged([size, seconds]) {
  const run = spawnSync(process.execPath, [program, String(size), '6', '8', String(seconds)], { encoding: 'utf8' });
  if (run.status !== 0) throw new Error(run.stderr);
  return JSON.parse(run.stdout);
}

const seconds = (ms) => `${(ms / 1000).toFixed(2)} s`;
const mib = (kib) => `${Math.round(kib / 1024)} MiB`;
const stopped = ({ size, reached }) => (reached === size ? '' : ` (stopped at ${reached} of ${size} aircraft)`);

export function fleet() {
  const runs = SIZES.map(judged);
  const thousand = runs.at(-1);
  const { whole, processor, kept, flights, changes, peakKiB } = thousand;
  const growth = runs.map((run) => `${run.size}: ${seconds(run.whole)}${stopped(run)}, ${mib(run.peakKiB)}`);
  return [
    'a fleet of 1,000 aircraft x 6 open defects x 8 flights, compiled, one core:',
    `  recomputed whole   ${seconds(whole)}${stopped(thousand)}, ${seconds(processor)} of processor time, ${kept} of ${flights} flights kept`,
    `  after one change   median ${median(changes).toFixed(2)} ms, longest ${Math.max(...changes).toFixed(2)} ms`,
    `  peak memory        ${mib(peakKiB)} of its own process`,
    'growth:',
    `  in the fleet           ${growth.join('   ')}`,
  ];
}
