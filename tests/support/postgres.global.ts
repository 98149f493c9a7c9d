import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { TestProject } from 'vitest/node';
import { startTestServer, type TestServer } from './postgres-server.js';

declare module 'vitest' {
  interface ProvidedContext {
    postgres: string;
  }
}

/**
 * One database server for the whole run, started when the first test file asks for it and not before: a run without
 * such a file costs nothing. Test files run in processes of their own, so they ask over the loopback.
 */
export default async function postgres(project: TestProject): Promise<() => Promise<void>> {
  let server: Promise<TestServer> | undefined;
  const secret = `/${crypto.randomUUID()}`;
  const desk = createServer(({ url }, response) => {
    if (url !== secret) return response.writeHead(404).end();
    server ??= startTestServer();
    return server.then(
      ({ adminUrl, template }) => response.end(JSON.stringify({ adminUrl, template })),
      (error: unknown) => response.writeHead(500).end(String(error)),
    );
  });
  await new Promise<void>((resolve) => desk.listen(0, '127.0.0.1', resolve));
  project.provide('postgres', `http://127.0.0.1:${(desk.address() as AddressInfo).port}${secret}`);
  return async () => {
    desk.close();
    await (await server?.catch(() => undefined))?.stop();
  };
}
