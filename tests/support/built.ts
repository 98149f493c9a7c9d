import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

const root = fileURLToPath(new URL('../..', import.meta.url));

/**
 * Sees to it that dist holds what the sources say, for a test that runs the compiled program. Many test files may ask
 * at once: the first builds, the others wait, and nobody builds what is built already.
 */
export async function built(): Promise<void> {
  await promisify(execFile)(process.execPath, ['.config/build.mjs', '--if-stale'], { cwd: root });
}
