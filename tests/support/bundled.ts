import { mkdirSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { build } from 'vite';

/**
 * A program of the tests as one file that plain node runs, for a test that needs a process of its own to kill. Packages
 * stay outside it.
 * @returns the path of the file
 */
export async function bundled(entry: string): Promise<string> {
  const name = basename(entry, '.ts');
  const outDir = resolve('.test-output/programs', `${name}-${process.pid}`);
  mkdirSync(outDir, { recursive: true });
  await build({
    configFile: false,
    logLevel: 'warn',
    resolve: { conditions: ['development'] },
    ssr: { resolve: { conditions: ['development'] } },
    build: {
      ssr: resolve(entry),
      outDir,
      emptyOutDir: true,
      minify: false,
      rolldownOptions: { output: { entryFileNames: `${name}.mjs` } },
    },
  });
  return join(outDir, `${name}.mjs`);
}
