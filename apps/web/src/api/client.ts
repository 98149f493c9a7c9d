/** Talks HTTP to the server and to nothing else. Shapes come from the server's own OpenAPI document. */
import type { components } from './openapi.generated.js';
import { problemOf, unreachable } from './problem.js';
import { noteServerTime } from './server-clock.js';

export type Schemas = components['schemas'];

export interface Answer<T> {
  body: T;
  etag: string | null;
}

export interface Act {
  method: 'POST' | 'PUT' | 'DELETE';
  /** Below /api. */
  path: string;
  body?: unknown;
  /** ETag of the thing as it was read. */
  seen?: string | null;
}

/** Reads what stands at a path below /api. Throws Problem. */
export async function read<T>(path: string): Promise<Answer<T>> {
  const answer = await send<T>('GET', path);
  const { at } = (answer.body ?? {}) as { at?: unknown };
  if (typeof at === 'string') noteServerTime(at);
  return answer;
}

/** Asks a question that changes nothing. @param question JSON Throws Problem. */
export async function ask<T>(path: string, question: string): Promise<Answer<T>> {
  return send<T>('POST', path, JSON.parse(question));
}

/** Sends an act under a key of its own: the same key sent again does nothing twice. Throws Problem. */
export async function carryOut<T>({ method, path, body, seen }: Act, key: string): Promise<Answer<T>> {
  return send<T>(method, path, body, { 'idempotency-key': key, ...(seen ? { 'if-match': seen } : {}) });
}

/** A fresh UUID. `crypto.randomUUID` is missing where a page comes over plain HTTP from another machine. */
export function freshKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x40;
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})/, '$1-$2-$3-$4-');
}

/** On a stand with poor signal a request may hang; after this the page says so, and offers to send again. */
const LONGEST_WAIT_MS = 30_000;

async function send<T>(
  method: string,
  path: string,
  body?: unknown,
  headers: Record<string, string> = {},
): Promise<Answer<T>> {
  const said = body === undefined ? {} : { body: JSON.stringify(body) };
  const type: Record<string, string> = body === undefined ? {} : { 'content-type': 'application/json' };
  let response: Response;
  let text: string;
  try {
    const signal = AbortSignal.timeout(LONGEST_WAIT_MS);
    response = await fetch(`/api${path}`, { method, headers: { ...headers, ...type }, ...said, signal });
    text = await response.text();
  } catch {
    throw unreachable(method);
  }
  const value = parsed(text);
  if (!response.ok) throw problemOf(response.status, value);
  return { body: value as T, etag: response.headers.get('etag') };
}

/** Something between here and the server may answer with a page of its own. */
function parsed(text: string): unknown {
  try {
    return text === '' ? null : (JSON.parse(text) as unknown);
  } catch {
    return null;
  }
}
