import type {} from '@fastify/cookie';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { SESSION_COOKIE } from '../http/session.guard.js';

/** The session travels in a cookie that no script reads and no other site sends. */
export function setSessionCookie(reply: FastifyReply, request: FastifyRequest, token: string): void {
  void reply.setCookie(SESSION_COOKIE, token, {
    path: '/',
    httpOnly: true,
    sameSite: 'strict',
    secure: request.protocol === 'https',
  });
}
