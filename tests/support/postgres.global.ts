import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { TestProject } from 'vitest/node';
import { startTestServer, type TestServer } from './postgres-server.js';

declare module 'vitest' {
  interface ProvidedContext {
    postgres: string;
  }
}

let server: Promise<TestServer> | undefined;
let desk: Server | undefined;

/**
 * One database server for the whole run, started when the first test file asks for it and not before: a run without
 * such a file costs nothing. Test files run in processes of their own, so they ask over the loopback.
 */
export async function setup(project: TestProject): Promise<void> {
  const secret = `/${crypto.randomUUID()}`;
  const opened = createServer(({ url }, response) => {
    if (url !== secret) return response.writeHead(404).end();
    server ??= startTestServer();
    return server.then(
      ({ adminUrl, template }) => response.end(JSON.stringify({ adminUrl, template })),
      (error: unknown) => response.writeHead(500).end(String(error)),
    );
  });
  desk = opened;
  await new Promise<void>((resolve) => opened.listen(0, '127.0.0.1', resolve));
  project.provide('postgres', `http://127.0.0.1:${(opened.address() as AddressInfo).port}${secret}`);
}

export async function teardown(): Promise<void> {
  desk?.close();
  await (await server?.catch(() => undefined))?.stop();
}
