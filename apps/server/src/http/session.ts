import { createParamDecorator, type ExecutionContext, SetMetadata } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import type { Role } from '#mel';
import type { KnownCredential } from '#store';
import { Problem } from './problem.js';

/** Who sends this request, for which operator. Read from the database at every request, so a leaver is out at once. */
export interface Session {
  personId: string;
  name: string;
  reference: string;
  operatorId: string;
  operatorName: string;
  roles: (Role | 'cabin')[];
  tokenHash: string;
  sessionId: string;
}

/** The same before an operator is chosen. */
export interface SignedIn {
  personId: string;
  name: string;
  reference: string;
  tokenHash: string;
  sessionId: string;
  operatorId: string | null;
}

export interface WithSession {
  /** What the secret in the request is proved by; only where there is one. */
  credential?: KnownCredential | null;
  signedIn?: SignedIn;
  session?: Session;
}

/** Marks an address that needs nobody signed in. */
export const Open = () => SetMetadata('open', true);
/** Marks an address that needs a person but no operator yet. */
export const WithoutOperator = () => SetMetadata('without-operator', true);
/** Marks an address that needs one of these roles. */
export const Roles = (...roles: Role[]) => SetMetadata('roles', roles);

export const CurrentSession = createParamDecorator((_data: unknown, context: ExecutionContext): Session => {
  const session = context.switchToHttp().getRequest<FastifyRequest & WithSession>().session;
  if (!session) throw new Problem('no-operator-chosen', 'This address works for one operator at a time.');
  return session;
});

export const CurrentPerson = createParamDecorator((_data: unknown, context: ExecutionContext): SignedIn => {
  const signedIn = context.switchToHttp().getRequest<FastifyRequest & WithSession>().signedIn;
  if (!signedIn) throw new Problem('not-signed-in', 'This address needs a person signed in.');
  return signedIn;
});
