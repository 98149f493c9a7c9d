import { join } from 'node:path';
import type { Command } from '../command.js';
import { type Found, withDatabase } from '../database.js';
import { demoOnEmpty, ROOT } from '../demo.js';
import { exportHeads, HEAD_OPTIONS, headsAsked, type HeadsAsked } from '../heads.js';
import { filesOf, readGiven } from '../options.js';
import { UsageError } from '../usage-error.js';
import { demoWords } from '../words/demo.js';

export const start: Command = {
  name: 'start',
  takes: '[--database URL] [--host ADDRESS] [--port N] [--heads FOLDER] [--heads-every MINUTES] [--head-key FILE]',
  summary: 'run the server and the pages; without a database it brings one of its own',
  async run(args) {
    const given = readGiven(args, ['database', 'host', 'port', ...HEAD_OPTIONS]);
    filesOf(given);
    const host = given.options.get('host') ?? process.env['HOST'] ?? '127.0.0.1';
    const port = portOf(given.options.get('port') ?? process.env['PORT'] ?? '4170');
    const heads = headsAsked(given);
    await withDatabase(given.options.get('database'), (found) => serve(found, heads, host, port), { mayMake: true });
    return { value: null, words: '', exit: 0 as const };
  },
};

async function serve({ ownerUrl, name }: Found, asked: HeadsAsked, host: string, port: number): Promise<void> {
  const { pino } = await import('pino');
  const { ensureAppRole, migrate, openStore, startSealer } = await import('#store');
  const { startServer } = await import('../../../server/src/index.js');
  const logger = pino({ level: process.env['LOG_LEVEL'] ?? 'warn' });
  const tzdb = process.versions.tz ?? 'unknown';
  const appUrl = await ensureAppRole(ownerUrl);
  await migrate(ownerUrl);
  const store = await openStore(appUrl);
  const demo = await demoOnEmpty(ownerUrl, store, tzdb);
  const now = () => new Date().toISOString();
  const sealer = await startSealer(ownerUrl, { onError: (err) => logger.error({ err }, 'sealing failed') });
  const heads = await exportHeads(ownerUrl, asked, now, (err) => logger.error({ err }, 'signing heads failed'));
  const pages = join(ROOT, 'dist/apps/web');
  const requestsPerMinute = Number(process.env['REQUESTS_PER_MINUTE'] ?? 1200);
  const server = await startServer({ store, logger, now, tzdb, heads, host, port, pages, requestsPerMinute });
  print(`Proviso is ready: ${server.url} (database ${name}, time-zone data ${tzdb})`);
  if (heads) print(`Signed heads of the record: ${asked.folder}, every ${asked.minutes} min, key ${asked.key}`);
  if (demo) print(demoWords(demo));
  await toldToStop();
  await server.close();
  await sealer.stop();
  await heads?.stop();
  await store.close();
}

function portOf(text: string): number {
  const port = Number(text);
  if (Number.isInteger(port) && port >= 0 && port <= 65_535) return port;
  throw new UsageError(`--port ${text} is no port number from 0 to 65535`);
}

function toldToStop(): Promise<void> {
  return new Promise((resolve) => {
    process.once('SIGINT', () => resolve());
    process.once('SIGTERM', () => resolve());
  });
}

function print(text: string): void {
  process.stdout.write(`${text}\n`);
}
