/** A fleet recomputed whole and after one change, in a process of its own that tells its peak memory. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { median } from './measure.mjs';

const program = fileURLToPath(new URL('fleet-process.mjs', import.meta.url));

function judged(size) {
  const run = spawnSync(process.execPath, [program, String(size), '6', '8'], { encoding: 'utf8' });
  if (run.status !== 0) throw new Error(run.stderr);
  return JSON.parse(run.stdout);
}

export function fleet() {
  const sizes = [250, 500, 1000, 2000].map(judged);
  const thousand = sizes[2];
  const mib = (kib) => `${Math.round(kib / 1024)} MiB`;
  return [
    'a fleet of 1,000 aircraft x 6 open defects x 8 flights, compiled, one core:',
    `  recomputed whole   ${(thousand.whole / 1000).toFixed(2)} s, ${thousand.kept} of ${thousand.flights} flights kept`,
    `  after one change   median ${median(thousand.changes).toFixed(2)} ms, longest ${Math.max(...thousand.changes).toFixed(2)} ms`,
    `  peak memory        ${mib(thousand.peakKiB)} of its own process`,
    'growth:',
    `  in the fleet           ${sizes.map(({ size, whole, peakKiB }) => `${size}: ${(whole / 1000).toFixed(2)} s, ${mib(peakKiB)}`).join('   ')}`,
  ];
}
