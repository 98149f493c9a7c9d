/**
 * Compiles the server, the command and the libs into dist, and the pages beside them.
 *
 * `node .config/build.mjs` builds anew; `--if-stale` builds only when dist was made from other sources than those on
 * the disk now. Tests, `npm start` and the bench all come here, several of them at once, so one builds and others wait.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const stamp = join(root, 'dist/.built-from');
const lock = join(root, '.test-output/build.lock');

/** One hash over everything that the build reads. */
function sources() {
  const files = ['apps', 'libs', 'seed'].flatMap((folder) =>
    existsSync(join(root, folder))
      ? readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
          .filter((entry) => entry.isFile() && !/\.spec\.tsx?$/.test(entry.name))
          .map((entry) => join(entry.parentPath, entry.name))
      : [],
  );
  const hash = createHash('sha256');
  for (const file of [...files.sort(), join(root, 'tsconfig.json'), join(root, 'package-lock.json')]) {
    hash
      .update(`${file.slice(root.length)}\0`)
      .update(readFileSync(file))
      .update('\0');
  }
  return hash.digest('hex');
}

const isFresh = () => existsSync(stamp) && readFileSync(stamp, 'utf8') === sources();

function run(...args) {
  const { status } = spawnSync(process.execPath, args, { cwd: root, stdio: 'inherit' });
  if (status !== 0) throw new Error(`build: ${args.join(' ')} failed`);
}

function build() {
  const from = sources();
  rmSync(join(root, 'dist'), { recursive: true, force: true });
  run('node_modules/typescript-7/bin/tsc', '-p', 'apps/tsconfig.build.json');
  if (existsSync(join(root, 'apps/web/index.html'))) {
    run('node_modules/vite/bin/vite.js', 'build', 'apps/web', '--logLevel', 'warn');
  }
  writeFileSync(stamp, from);
  console.log('build: dist is made anew');
}

/** Takes the lock, waiting for a builder that lives and clearing away one that was killed. */
async function take() {
  mkdirSync(dirname(lock), { recursive: true });
  for (;;) {
    try {
      return writeFileSync(lock, String(process.pid), { flag: 'wx' });
    } catch (error) {
      if (error.code !== 'EEXIST') throw error;
    }
    if (!holderLives()) rmSync(lock, { force: true });
    await wait(100);
  }
}

function holderLives() {
  try {
    const pid = Number(readFileSync(lock, 'utf8'));
    // Just created and not yet written, or gone again: look once more.
    return pid === 0 || process.kill(pid, 0);
  } catch (error) {
    return error.code === 'EPERM' || error.code === 'ENOENT';
  }
}

const onlyIfStale = process.argv.includes('--if-stale');
if (!onlyIfStale || !isFresh()) {
  await take();
  try {
    if (!onlyIfStale || !isFresh()) build();
  } catch (error) {
    console.error(error.message);
    process.exitCode = 1;
  } finally {
    rmSync(lock, { force: true });
  }
}
