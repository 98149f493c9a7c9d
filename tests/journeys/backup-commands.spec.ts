/** The two commands as an administrator runs them, each a process of its own: out of one database, into an empty one. */
import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { join } from 'node:path';
import { beforeAll, expect, it } from 'vitest';
import { built } from '../support/built.js';
import { freshDatabase } from '../support/postgres.js';
import { runningServer } from '../support/running-server.js';
import { scratchFolder } from './cli-scratch.js';

const MAIN = fileURLToPath(new URL('../../dist/apps/cli/src/main.js', import.meta.url));
const { folder } = scratchFolder();

beforeAll(() => built(), 300_000);

async function proviso(...args: string[]): Promise<{ code: number; stdout: string; stderr: string }> {
  return promisify(execFile)(process.execPath, [MAIN, ...args]).then(
    ({ stdout, stderr }) => ({ code: 0, stdout, stderr }),
    ({ code, stdout, stderr }: { code: number; stdout: string; stderr: string }) => ({ code, stdout, stderr }),
  );
}

it('brings the demo into an empty database, where the record fits and the tables say what it says', async () => {
  const server = await runningServer({ demo: true });
  const empty = await freshDatabase();
  const file = join(folder, 'all.backup');
  try {
    const made = await proviso('backup', '--to', file, '--database', server.ownerUrl);
    expect(made).toMatchObject({ code: 0, stderr: '' });
    const over = await proviso('backup', '--to', file, '--database', server.ownerUrl);
    expect(over).toMatchObject({ code: 2, stderr: expect.stringContaining('is not written over') as string });
    const full = await proviso('restore', '--from', file, '--database', server.ownerUrl);
    expect(full).toMatchObject({ code: 2, stderr: expect.stringContaining('nothing was restored') as string });
    const done = await proviso('restore', '--from', file, '--database', empty.ownerUrl);
    expect(done).toMatchObject({ code: 0, stdout: expect.stringContaining('every record fits') as string });
    const fits = await proviso('record', 'verify', '--database', empty.ownerUrl);
    expect(fits).toMatchObject({ code: 0, stdout: expect.stringContaining('all fit') as string });
    const equal = await proviso('record', 'compare', '--database', empty.ownerUrl);
    expect(equal).toMatchObject({ code: 0, stdout: expect.stringContaining('all say the same') as string });
  } finally {
    await server.stop();
    await empty.drop();
  }
});
