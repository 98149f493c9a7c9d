import { lookup } from 'node:dns';
import { request as overHttp, type IncomingMessage, type RequestOptions } from 'node:http';
import { request as overHttps } from 'node:https';
import type { LookupFunction } from 'node:net';
import { failed, type Outcome } from './outcome.js';
import { retryAfterSeconds } from './pause.js';
import { isInside, refusedPlace } from './refused-place.js';

export interface Posted {
  address: string;
  headers: Record<string, string>;
  body: string;
}

export interface PostOptions {
  /** Machines inside may be reached. */
  mayInside: boolean;
  longestMs: number;
  now: string;
}

/**
 * Posts a message to an endpoint. 2xx is delivered, 410 means gone (Standard Webhooks), everything else is tried again;
 * no redirect is followed. What the endpoint answers besides is not read.
 */
export function postWebhook({ address, headers, body }: Posted, options: PostOptions): Promise<Outcome> {
  const refused = refusedPlace(address, options.mayInside);
  if (refused !== null) return Promise.resolve({ kind: 'refused', problem: `The address ${refused}.`, gone: false });
  const url = new URL(address);
  const asked: RequestOptions = {
    method: 'POST',
    headers: { ...headers, 'content-length': Buffer.byteLength(body), 'user-agent': 'Proviso' },
    signal: AbortSignal.timeout(options.longestMs),
    agent: false,
    ...(options.mayInside ? {} : { lookup: lookOutside }),
  };
  return new Promise((resolve) => {
    const sending = (url.protocol === 'https:' ? overHttps : overHttp)(url, asked, (answer) => {
      answer.on('error', () => undefined);
      answer.destroy();
      resolve(outcomeOf(answer, options.now));
    });
    sending.on('error', (error) => resolve(failed(wordsOf(error))));
    sending.end(body);
  });
}

function outcomeOf({ statusCode = 0, headers }: IncomingMessage, now: string): Outcome {
  if (statusCode >= 200 && statusCode < 300) return { kind: 'sent' };
  if (statusCode === 410) return { kind: 'refused', problem: 'The endpoint answered 410: it is gone.', gone: true };
  return failed(`The endpoint answered ${statusCode}.`, retryAfterSeconds(headers['retry-after'], now));
}

/** Finds the numbers of a name, and none of a machine inside. */
const lookOutside: LookupFunction = (hostname, options, found) => {
  lookup(hostname, { ...options, all: true }, (error, numbers) => {
    if (error) return found(error, '', 0);
    const open = numbers.filter(({ address }) => !isInside(address));
    const [first] = open;
    if (!first) return found(new Error('its name leads to a machine inside'), '', 0);
    if (options.all === true) return found(null, open);
    found(null, first.address, first.family);
  });
};

function wordsOf(error: Error): string {
  const { code } = error as { code?: string };
  if (error.name === 'AbortError' || error.name === 'TimeoutError') return 'The endpoint did not answer in time.';
  return `The endpoint cannot be reached: ${error.message || code || 'no reason given'}.`;
}
