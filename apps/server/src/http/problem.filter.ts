import { randomUUID } from 'node:crypto';
import { type ArgumentsHost, Catch, type ExceptionFilter, HttpException, Inject } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Logger } from 'pino';
import { Refusal } from '#deferrals';
import { EvaluatorsDisagree } from '#dispatch';
import { StaleVersion } from '#store';
import { Problem, type ProblemBody, refusalBody } from './problem.js';
import { LOGGER } from './tokens.js';

/** Turns everything thrown into problem details; what nobody foresaw is logged whole and answered without its inside. */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  constructor(@Inject(LOGGER) private readonly logger: Logger) {}

  catch(thrown: unknown, host: ArgumentsHost): void {
    const reply = host.switchToHttp().getResponse<FastifyReply>();
    const request = host.switchToHttp().getRequest<FastifyRequest>();
    const body = this.bodyOf(thrown, request);
    sendProblem(reply, body);
  }

  private bodyOf(thrown: unknown, request: FastifyRequest): ProblemBody {
    if (thrown instanceof Problem) return thrown.body();
    if (thrown instanceof Refusal) return refusalBody(thrown);
    if (thrown instanceof StaleVersion) return new Problem('changed-meanwhile', thrown.message).body();
    if (thrown instanceof EvaluatorsDisagree) return this.disagreement(thrown, request).body();
    const known = problemOfFramework(thrown, request);
    if (known) return known.body();
    const instance = `urn:uuid:${randomUUID()}`;
    this.logger.error({ err: thrown, instance, method: request.method, url: request.url }, 'unforeseen error');
    return new Problem('internal-error', 'The request was not carried out.', { instance }).body();
  }

  /** Of an answer that is searched for. One on recorded rows is refused where it is judged, with the conditions that differ. */
  private disagreement({ message, aircraft, flight, ways }: EvaluatorsDisagree, request: FastifyRequest): Problem {
    const { method, url } = request;
    this.logger.error({ aircraft, flight, ways, method, url }, 'two ways of computing an answer disagree');
    return new Problem('judges-disagree', message);
  }
}

export function sendProblem(reply: FastifyReply, body: ProblemBody): void {
  void reply
    .status(body.status)
    .header('content-type', 'application/problem+json; charset=utf-8')
    .header('cache-control', 'no-store')
    .send(JSON.stringify(body));
}

function problemOfFramework(thrown: unknown, request: FastifyRequest): Problem | null {
  const status = statusOf(thrown);
  if (status === 404)
    return new Problem('not-found', `${request.method} ${request.url.split('?')[0]} leads nowhere.`);
  if (status === 413) return new Problem('body-too-large', 'The body is larger than this address takes.');
  if (status === 415) return new Problem('unsupported-media-type', 'Only application/json is taken here.');
  if (status === 429) return new Problem('too-many-requests', 'Too many requests from this address.');
  if (status !== null && status >= 400 && status < 500) {
    return new Problem('unreadable-body', thrown instanceof Error ? thrown.message : 'The request cannot be read.');
  }
  return null;
}

function statusOf(thrown: unknown): number | null {
  if (thrown instanceof HttpException) return thrown.getStatus();
  if (typeof thrown === 'object' && thrown !== null && 'statusCode' in thrown) return Number(thrown.statusCode);
  return null;
}
