/** Reaching by a webhook what only this server can reach: the name of an endpoint leads inside, or it sends elsewhere. */
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { postWebhook } from './post-webhook.js';

type Found = (error: Error | null, numbers: { address: string; family: number }[]) => void;

/** What a name leads to: the endpoint's owner decides that, and may decide otherwise a moment later. */
const names = vi.hoisted(() => ({ of: {} as Record<string, string[]> }));
vi.mock('node:dns', () => ({
  lookup: (name: string, _options: object, found: Found) =>
    found(
      null,
      (names.of[name] ?? []).map((address) => ({ address, family: address.includes(':') ? 6 : 4 })),
    ),
}));

const asked: string[] = [];
const inside = createServer((request, response) => {
  asked.push(request.url ?? '');
  response.writeHead(request.url === '/moved' ? 307 : 204, { location: '/inner' }).end();
});
let port: number;

beforeAll(async () => {
  await new Promise<void>((resolve) => inside.listen(0, '127.0.0.1', resolve));
  port = (inside.address() as AddressInfo).port;
});
afterAll(() => inside.close());

const post = (address: string, mayInside: boolean) =>
  postWebhook({ address, headers: {}, body: '{}' }, { mayInside, longestMs: 5000, now: '2026-01-15T12:00:00Z' });

describe('a message to an endpoint', () => {
  it('goes to no machine inside, whatever name was given to it', async () => {
    for (const number of ['127.0.0.1', '::1', '10.0.0.1', '169.254.169.254', '::ffff:127.0.0.1', '::7f00:1']) {
      names.of['reminders.attacker.example'] = [number];
      const outcome = await post(`http://reminders.attacker.example:${port}/x`, false);
      expect(outcome, number).toMatchObject({ kind: 'failed', problem: expect.stringContaining('machine inside') });
    }
    expect(asked).toEqual([]);
  });

  it('goes there where the server was told that it may: so the test above would see it', async () => {
    expect(await post(`http://127.0.0.1:${port}/x`, true)).toEqual({ kind: 'sent' });
    expect(asked.splice(0)).toEqual(['/x']);
  });

  it('goes nowhere else when the endpoint says so', async () => {
    const outcome = await post(`http://127.0.0.1:${port}/moved`, true);
    expect(outcome).toMatchObject({ kind: 'failed', problem: 'The endpoint answered 307.' });
    expect(asked.splice(0)).toEqual(['/moved']);
  });
});
