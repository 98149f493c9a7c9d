import type { FastifyRequest } from 'fastify';
import { Problem } from './problem.js';

const KEY = /^"?([\w-]{8,100})"?$/;

/** The client's own name for one request (Idempotency-Key, draft-ietf-httpapi-idempotency-key-header-07). */
export function idempotencyKey(request: FastifyRequest): string {
  const header = request.headers['idempotency-key'];
  if (typeof header !== 'string') {
    throw new Problem('idempotency-key-missing', 'Every request that changes something carries an Idempotency-Key.');
  }
  const key = KEY.exec(header)?.[1];
  if (!key) throw new Problem('idempotency-key-missing', 'Idempotency-Key must be 8 to 100 letters, digits, - or _.');
  return key;
}

/** The version a client has seen (RFC 9110 If-Match, a strong ETag holding the row's version). */
export function seenVersion(request: FastifyRequest): number {
  const header = request.headers['if-match'];
  if (header === undefined)
    throw new Problem('precondition-required', 'If-Match with the ETag of the item is needed.');
  const version = /^"(\d{1,15})"$/.exec(header)?.[1];
  if (version === undefined) throw new Problem('changed-meanwhile', `If-Match ${header} is no ETag of this item.`);
  return Number(version);
}

export function etag(version: number): string {
  return `"${version}"`;
}
