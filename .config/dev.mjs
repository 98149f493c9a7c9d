/**
 * For developing: builds once, then keeps the compiler, the pages and the program running, each watching its files.
 * Arguments go to `proviso start`. Ctrl-C ends all of them.
 */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const cwd = fileURLToPath(new URL('..', import.meta.url));
const first = spawnSync(process.execPath, ['.config/build.mjs', '--if-stale'], { cwd, stdio: 'inherit' });
if (first.status !== 0) process.exit(first.status ?? 1);
// From here on dist changes under the watchers: what it was built from is no longer known.
rmSync(new URL('../dist/.built-from', import.meta.url), { force: true });

const watchers = [
  ['node_modules/typescript-7/bin/tsc', '-p', 'apps/tsconfig.build.json', '--watch', '--preserveWatchOutput'],
  ['--watch', '--watch-preserve-output', 'dist/apps/cli/src/main.js', 'start', ...process.argv.slice(2)],
];
if (existsSync(new URL('../apps/web/index.html', import.meta.url))) {
  watchers.push(['node_modules/vite/bin/vite.js', 'build', 'apps/web', '--watch', '--logLevel', 'warn']);
}
const running = watchers.map((args) => spawn(process.execPath, args, { cwd, stdio: 'inherit' }));
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => running.forEach((child) => child.kill(signal)));
