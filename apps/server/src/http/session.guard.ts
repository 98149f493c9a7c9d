import { createHash } from 'node:crypto';
import { type CanActivate, type ExecutionContext, Inject, Injectable } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import type {} from '@fastify/cookie';
import type { FastifyRequest } from 'fastify';
import type { Role } from '#mel';
import type { SignedIn, Store } from '#store';
import { Problem } from './problem.js';
import type { WithSession } from './session.js';
import { CLOCK, type Clock, STORE } from './tokens.js';

export const SESSION_COOKIE = 'proviso_session';

export function hashToken(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}

/** Finds who sends the request, refuses requests from other sites, and checks the roles that the address asks for. */
@Injectable()
export class SessionGuard implements CanActivate {
  constructor(
    private readonly reflector: Reflector,
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const request = context.switchToHttp().getRequest<FastifyRequest & WithSession>();
    refuseForeignOrigin(request);
    if (this.mark<boolean>('open', context)) return true;
    const token = request.cookies[SESSION_COOKIE];
    const found = token ? await this.sessionOf(request, hashToken(token)) : null;
    if (!found) throw new Problem('not-signed-in', 'This address needs a person signed in.');
    const { person, operatorId, operatorName, roles } = found;
    const { tokenHash, sessionId } = found;
    const { id: personId, name, reference } = person;
    request.signedIn = { personId, name, reference, tokenHash, sessionId, operatorId };
    if (this.mark<boolean>('without-operator', context)) return true;
    if (operatorId === null || operatorName === null) {
      throw new Problem('no-operator-chosen', 'Choose one of your operators first.');
    }
    if (roles.length === 0) throw new Problem('role-missing', `You hold no role for ${operatorName} at this time.`);
    request.session = { ...request.signedIn, operatorId, operatorName, roles };
    checkRoles(this.mark<Role[]>('roles', context), roles);
    return true;
  }

  /** A request that is signed with a secret asks for what proves it in the same question. */
  private async sessionOf(request: FastifyRequest & WithSession, tokenHash: string): Promise<SignedIn | null> {
    if (!signsBySecret(request.body)) return this.store.identity.session(tokenHash, this.now());
    const found = await this.store.identity.sessionToSign(tokenHash, this.now());
    request.credential = found?.credential ?? null;
    return found?.session ?? null;
  }

  private mark<T>(name: string, context: ExecutionContext): T | undefined {
    return this.reflector.getAllAndOverride<T | undefined>(name, [context.getHandler(), context.getClass()]);
  }
}

/** Not checked yet: only where to look. */
function signsBySecret(body: unknown): boolean {
  const { sign } = (body ?? {}) as { sign?: { secret?: unknown } | null };
  return typeof sign?.secret === 'string';
}

function checkRoles(asked: Role[] | undefined, held: (Role | 'cabin')[]): void {
  if (!asked || asked.some((role) => held.includes(role))) return;
  throw new Problem(
    'role-missing',
    `This needs one of the roles ${asked.join(', ')}; yours: ${held.join(', ') || 'none'}.`,
  );
}

/**
 * A browser says where an unsafe request comes from: by Origin, which is the host it was sent to where it is ours, and by
 * Sec-Fetch-Site, which no page can forge.
 */
function refuseForeignOrigin(request: FastifyRequest): void {
  if (request.method === 'GET' || request.method === 'HEAD') return;
  const site = request.headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin' && site !== 'none') {
    throw new Problem(
      'foreign-origin',
      `The request came from a page of ${site === 'same-site' ? 'a neighbouring' : 'another'} site.`,
    );
  }
  const origin = request.headers.origin;
  if (origin === undefined) return;
  if (URL.canParse(origin) && new URL(origin).host === request.host) return;
  throw new Problem('foreign-origin', `The request came from ${origin}.`);
}
