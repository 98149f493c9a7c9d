/**
 * A million random cases held against the enumeration of everything that is unknown; any one outside [lo, hi] ends the
 * run with its seed. `npm run bench agreeing 50000 7` asks for fewer, and for others.
 */
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const MILLION = 1_000_000;
const entry = fileURLToPath(new URL('agreeing.program.ts', import.meta.url));

export async function agreeing(count = MILLION, seed = 20261125) {
  const outDir = '.test-output/bench';
  await build({
    configFile: false,
    logLevel: 'warn',
    resolve: { conditions: ['development'] },
    ssr: { resolve: { conditions: ['development'] } },
    build: {
      ssr: entry,
      outDir,
      minify: false,
      rolldownOptions: { output: { entryFileNames: 'agreeing.mjs' } },
    },
  });
  const told = execFileSync(process.execPath, [`${outDir}/agreeing.mjs`, String(count), String(seed)], {
    encoding: 'utf8',
  });
  const { cases, seconds, spread } = JSON.parse(told);
  return [
    `${cases.toLocaleString('en')} cases, none outside [lo, hi]; ${seconds.toFixed(0)} s, ${((1000 * seconds) / cases).toFixed(2)} ms each, from seed ${seed}`,
    `held: ${spread}`,
  ];
}
