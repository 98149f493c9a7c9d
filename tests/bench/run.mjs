/**
 * `npm run bench`: what the parts cost, each beside something plain that does the same, in one run on one machine. A rate
 * by itself says little about another machine; the ratios are what to compare. `npm run bench <part>` runs one part alone.
 */
import { cpus, totalmem } from 'node:os';
import { agreeing } from './agreeing.mjs';
import { fleet } from './fleet.mjs';
import { judging } from './judging.mjs';
import { movements } from './movements.mjs';
import { overHttp } from './over-http.mjs';
import { proposing } from './proposing.mjs';
import { record } from './record.mjs';
import { reasoning } from './reasoning.mjs';
import { watching } from './watching.mjs';
import { starting } from './starting.mjs';
import { yardsticks } from './yardsticks.mjs';

const [only, ...settings] = process.argv.slice(2);
const parts = {
  judging,
  proposing,
  reasoning,
  fleet,
  yardsticks,
  starting,
  'over-http': overHttp,
  record,
  movements,
  watching,
  agreeing,
};

console.log(`machine: ${cpus().length} x ${cpus()[0]?.model.trim()}, ${Math.round(totalmem() / 2 ** 30)} GiB`);
console.log(`node ${process.version}, time-zone data ${process.versions.tz}`);
for (const [name, part] of Object.entries(parts)) {
  if (only !== undefined && only !== name) continue;
  console.log(`\n${name}`);
  for (const line of await part(...settings.map(Number))) console.log(`  ${line}`);
}
