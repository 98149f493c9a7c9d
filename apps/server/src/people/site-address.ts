import { isIP } from 'node:net';
import type { FastifyRequest } from 'fastify';
import { Problem } from '../http/problem.js';

export const PUBLIC_URL = Symbol('public url');

/** How a request was addressed. */
export type Addressed = Pick<FastifyRequest, 'protocol' | 'host'>;

/** Where people open the pages: as configured, else as this request was addressed. */
export function originOf(publicUrl: string | null, request: Addressed): URL {
  const opened = publicUrl ?? `${request.protocol}://${request.host}`;
  if (URL.canParse(opened)) return new URL(opened);
  const reason = 'is no name of a host';
  throw new Problem('invalid-input', `Host ${reason}.`, { errors: [{ pointer: '/Host', reason }] });
}

/** The same for passkeys, which are bound to a name and never to a number. */
export function namedOriginOf(publicUrl: string | null, request: Addressed): URL {
  const origin = originOf(publicUrl, request);
  const number = isIP(origin.hostname.replace(/^\[|\]$/g, '')) !== 0;
  if (number) throw new Problem('passkeys-need-a-name', `${origin.host} is a number; a passkey is bound to a name.`);
  return origin;
}
