import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import { isUUID } from 'class-validator';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Problem } from './problem.js';
import type { Session, WithSession } from './session.js';

/** An act on one thing: who, by which request, on which id. */
export interface Called {
  session: Session;
  request: FastifyRequest;
  reply: FastifyReply;
  id: string;
}

export const Calling = createParamDecorator((_data: unknown, context: ExecutionContext): Called => {
  const http = context.switchToHttp();
  const request = http.getRequest<FastifyRequest & WithSession>();
  const { id } = request.params as { id?: string };
  if (id === undefined || !isUUID(id)) throw new Problem('not-found', `"${id ?? ''}" is no id.`);
  if (!request.session) throw new Problem('no-operator-chosen', 'This address works for one operator at a time.');
  return { session: request.session, request, reply: http.getResponse<FastifyReply>(), id: id.toLowerCase() };
});
