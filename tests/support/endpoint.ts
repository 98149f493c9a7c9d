/** An endpoint of a program: takes messages, keeps what came, and answers as it is told. */
import { createServer, type IncomingHttpHeaders } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface MessageArrived {
  headers: Record<string, string>;
  body: string;
  at: number;
}

export interface Endpoint {
  url: string;
  arrived: MessageArrived[];
  /** How the next messages are answered, one after the other; then with 204. */
  answers: { status: number; headers?: Record<string, string> }[];
  stop(): Promise<void>;
}

export async function endpoint(): Promise<Endpoint> {
  const arrived: MessageArrived[] = [];
  const answers: Endpoint['answers'] = [];
  const server = createServer((request, response) => {
    const chunks: Buffer[] = [];
    request.on('data', (chunk: Buffer) => chunks.push(chunk));
    request.on('end', () => {
      arrived.push({ headers: plain(request.headers), body: Buffer.concat(chunks).toString(), at: Date.now() });
      const { status, headers = {} } = answers.shift() ?? { status: 204 };
      response.writeHead(status, headers).end();
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}/reminders`,
    arrived,
    answers,
    stop: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}

function plain(headers: IncomingHttpHeaders): Record<string, string> {
  return Object.fromEntries(Object.entries(headers).map(([name, value]) => [name, String(value)]));
}
