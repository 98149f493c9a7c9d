/**
 * Movement messages come as plain text, from gateways that know no JSON. Nowhere else is text taken: a page of another
 * site can send it without asking. Here it cannot, for want of the Idempotency-Key that every act needs.
 */
import type { FastifyInstance } from 'fastify';
import { Problem } from '../http/problem.js';

export const MOVEMENTS_ADDRESS = '/api/movements';

export function takePlainText(fastify: FastifyInstance): void {
  fastify.removeContentTypeParser('text/plain');
  fastify.addContentTypeParser('text/plain', { parseAs: 'string' }, (request, body, done) => {
    if (request.routeOptions.url === MOVEMENTS_ADDRESS && request.method === 'POST') done(null, { text: body });
    else done(new Problem('unsupported-media-type', 'Only application/json is taken here.'));
  });
}
