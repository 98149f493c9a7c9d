import type {} from '@fastify/cookie';
import type { FastifyReply } from 'fastify';
import { SESSION_COOKIE } from '../http/session.guard.js';

/**
 * The session travels in a cookie that no script reads and no other site sends, and over TLS alone where the pages are
 * opened by it.
 */
export function setSessionCookie(reply: FastifyReply, opened: URL, token: string): void {
  void reply.setCookie(SESSION_COOKIE, token, {
    path: '/',
    httpOnly: true,
    sameSite: 'strict',
    secure: opened.protocol === 'https:',
  });
}
