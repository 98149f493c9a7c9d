/** Talks HTTP to the server and to nothing else. Shapes come from the server's own OpenAPI document. */
import type { components } from './openapi.generated.js';

export type Schemas = components['schemas'];

/** A refusal as the server words it (RFC 9457), or the fact that it could not be reached. */
export class ProblemError extends Error {
  constructor(
    readonly status: number,
    readonly title: string,
    readonly detail: string,
    readonly next: string,
    readonly type: string,
    readonly errors: { pointer: string; reason: string }[] = [],
  ) {
    super(detail);
  }
}

interface Answer<T> {
  body: T;
  etag: string | null;
}

export async function read<T>(path: string): Promise<Answer<T>> {
  return send<T>('GET', path);
}

/** Sends an act. The key stays the same when the same form is sent again, so that nothing happens twice. */
export async function act<T>(
  method: 'POST' | 'PUT' | 'DELETE',
  path: string,
  body: unknown,
  { key = crypto.randomUUID(), seen }: { key?: string; seen?: string | null } = {},
): Promise<Answer<T>> {
  return send<T>(method, path, body, { 'idempotency-key': key, ...(seen ? { 'if-match': seen } : {}) });
}

async function send<T>(
  method: string,
  path: string,
  body?: unknown,
  headers: Record<string, string> = {},
): Promise<Answer<T>> {
  let response: Response;
  try {
    response = await fetch(`/api${path}`, {
      method,
      headers: { ...headers, ...(body === undefined ? {} : { 'content-type': 'application/json' }) },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
  } catch {
    throw new ProblemError(
      0,
      'The server cannot be reached',
      'Nothing was sent.',
      'Check the connection, then send it again.',
      '',
    );
  }
  const text = await response.text();
  const value = text === '' ? null : (JSON.parse(text) as unknown);
  if (!response.ok) throw problemOf(response.status, value);
  return { body: value as T, etag: response.headers.get('etag') };
}

function problemOf(status: number, value: unknown): ProblemError {
  const problem = (value ?? {}) as Partial<{
    title: string;
    detail: string;
    next: string;
    type: string;
    errors: { pointer: string; reason: string }[];
  }>;
  return new ProblemError(
    status,
    problem.title ?? `The server answered ${status}`,
    problem.detail ?? '',
    problem.next ?? 'Try again.',
    problem.type ?? '',
    problem.errors ?? [],
  );
}
