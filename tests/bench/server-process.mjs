/** The built server as a process of its own, on a data folder of its own. */
import { spawn } from 'node:child_process';
import { chmodSync, readFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';

const MAIN = fileURLToPath(new URL('../../dist/apps/cli/src/main.js', import.meta.url));

/** As `npm start` gives it. */
const MEMORY = ['--max-semi-space-size=8', '--heap-growing-percent=20'];

/** @returns its address, how long it took to answer, and its peak memory when asked */
export async function startServer(folder, env = {}) {
  chmodSync(folder, 0o711);
  const port = await freePort();
  const started = performance.now();
  const child = spawn(process.execPath, [...MEMORY, MAIN, 'start', '--port', String(port)], {
    cwd: folder,
    env: { ...process.env, ...env },
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  const url = `http://127.0.0.1:${port}`;
  await answers(url, child);
  return {
    url,
    pid: child.pid,
    readyMs: performance.now() - started,
    peakMiB: () => Number(/VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${child.pid}/status`, 'utf8'))?.[1]) / 1024,
    cpuSeconds: () => cpuSecondsOf(child.pid),
    stop: () =>
      new Promise((resolve) => {
        child.once('exit', resolve);
        child.kill('SIGTERM');
      }),
  };
}

async function answers(url, child) {
  for (;;) {
    if (child.exitCode !== null) throw new Error(`the server ended with ${child.exitCode}`);
    const response = await fetch(`${url}/api/health`).catch(() => null);
    if (response?.ok) return;
    await sleep(20);
  }
}

function freePort() {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address();
      server.close(() => resolve(port));
    });
  });
}

/** User and system time in hundredths of a second, after the name in brackets (proc(5)). */
function cpuSecondsOf(pid) {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1].split(' ');
  return (Number(fields[11]) + Number(fields[12])) / 100;
}
