/** Time from `npm start` to the first good answer, cold and warm, and what the server needs in memory. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startServer } from './server-process.mjs';

export async function starting() {
  const folder = await mkdtemp(join(tmpdir(), 'proviso-bench-'));
  try {
    const cold = await startServer(folder);
    await cold.stop();
    const warm = [];
    for (let times = 0; times < 3; times += 1) {
      const server = await startServer(folder);
      warm.push(server.readyMs);
      await server.stop();
    }
    warm.sort((a, b) => a - b);
    return [
      `cold (no data folder: initdb, migrations, demo of two operators): ${seconds(cold.readyMs)}`,
      `warm: ${seconds(warm[1])} (median of 3)`,
    ];
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

const seconds = (milliseconds) => `${(milliseconds / 1000).toFixed(1)} s`;
