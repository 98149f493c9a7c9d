import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Reporter } from 'vitest/node';

/** Whoever starts a database or a browser for a test appends one line to this file. */
const USED = '.test-output/used.txt';

/** Says at the end of a run which database and which browser it used, so that nobody has to guess what was tested. */
export class UsedReporter implements Reporter {
  onInit(): void {
    mkdirSync(dirname(USED), { recursive: true });
    rmSync(USED, { force: true });
  }

  onTestRunEnd(): void {
    const lines = existsSync(USED) ? readFileSync(USED, 'utf8').split('\n') : [];
    const used = [...new Set(lines.filter((line) => line !== ''))].sort();
    console.log(
      used.length > 0 ? `\nThis run used\n  ${used.join('\n  ')}` : '\nThis run used no database and no browser',
    );
  }
}
