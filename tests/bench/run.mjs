/**
 * `npm run bench`: what the parts cost, each beside something plain that does the same, in one run on one machine. A rate
 * by itself says little about another machine; the ratios are what to compare.
 */
import { cpus, totalmem } from 'node:os';
import { judging } from './judging.mjs';
import { overHttp } from './over-http.mjs';
import { proposing } from './proposing.mjs';
import { starting } from './starting.mjs';

const only = process.argv[2];
const parts = { judging, proposing, starting, 'over-http': overHttp };

console.log(`machine: ${cpus().length} x ${cpus()[0]?.model.trim()}, ${Math.round(totalmem() / 2 ** 30)} GiB`);
console.log(`node ${process.version}, time-zone data ${process.versions.tz}`);
for (const [name, part] of Object.entries(parts)) {
  if (only !== undefined && only !== name) continue;
  console.log(`\n${name}`);
  for (const line of await part()) console.log(`  ${line}`);
}
