import { Body, Controller, Get, HttpCode, Inject, Post, Req, Res } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type {} from '@fastify/cookie';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Problem } from '../http/problem.js';
import { CurrentPerson, Open, type SignedIn, WithoutOperator } from '../http/session.js';
import { ref } from '../openapi/shape.js';
import { SignBody, StatementShownBody } from './proof.bodies.js';
import { setSessionCookie } from './session-cookie.js';
import { SignInService } from './sign-in.service.js';
import { SignOnService } from './sign-on.service.js';
import { originOf, PUBLIC_URL } from './site-address.js';

/** Certified when an account elsewhere is linked. */
export const LINK_STATEMENT = 'I link my account at the sign-on. From now on it signs me in, and signs in my name.';

/**
 * Comes back with the browser from the other site, which a cookie of the session would not: that one is strict. It holds
 * the id of one challenge and opens nothing.
 */
const COOKIE = 'proviso_sign_on';
const SECONDS = 300;

@ApiTags('people')
@Controller('api/sign-on')
export class SignOnController {
  constructor(
    private readonly signOn: SignOnService,
    private readonly signIn: SignInService,
    @Inject(PUBLIC_URL) private readonly publicUrl: string | null,
  ) {}

  @Open()
  @Get()
  @ApiOperation({ summary: 'Which sign-on of somebody else people may come in by.' })
  @ApiOkResponse({ schema: ref('SignOn') })
  offered(): object {
    return { name: this.signOn.name, statement: LINK_STATEMENT };
  }

  @Open()
  @Post()
  @HttpCode(200)
  @ApiOperation({ summary: 'Begin to sign in there: answers where the browser goes.' })
  @ApiOkResponse({ schema: ref('SignOnBegun') })
  async begin(@Req() request: FastifyRequest, @Res({ passthrough: true }) reply: FastifyReply): Promise<object> {
    return this.sent(reply, request, await this.signOn.begin('sign-in', this.origin(request)));
  }

  @WithoutOperator()
  @Post('link')
  @HttpCode(200)
  @ApiOperation({ summary: 'Prove yourself, to link your account there.' })
  @ApiOkResponse({ schema: ref('SignOnBegun') })
  async link(
    @CurrentPerson() person: SignedIn,
    @Body() sign: SignBody,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<object> {
    await this.signIn.proveFor(person, sign, LINK_STATEMENT, request);
    const { personId, sessionId } = person;
    return this.sent(reply, request, await this.signOn.begin('link', this.origin(request), { personId, sessionId }));
  }

  @WithoutOperator()
  @Post('signature')
  @HttpCode(200)
  @ApiOperation({ summary: 'Begin to sign on anew, to sign this statement.' })
  @ApiOkResponse({ schema: ref('SignOnBegun') })
  async signature(
    @CurrentPerson() { personId, sessionId }: SignedIn,
    @Body() { statement }: StatementShownBody,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<object> {
    const begun = await this.signOn.begin('signature', this.origin(request), { personId, sessionId, statement });
    return this.sent(reply, request, begun);
  }

  @Open()
  @Get('callback')
  @ApiOperation({ summary: 'Where the sign-on sends the browser back to.' })
  async callback(@Req() request: FastifyRequest, @Res() reply: FastifyReply): Promise<void> {
    const challenge = request.cookies[COOKIE];
    void reply.clearCookie(COOKIE, { path: '/api/sign-on' });
    const place = await this.arrived(challenge, request, reply).catch((error: unknown) => {
      if (error instanceof Problem) return `/signed-on?problem=${error.code}`;
      throw error;
    });
    void reply.redirect(place, 303);
  }

  private async arrived(
    challenge: string | undefined,
    request: FastifyRequest,
    reply: FastifyReply,
  ): Promise<string> {
    if (challenge === undefined) throw new Problem('challenge-over', 'The sign-on was not begun in this browser.');
    const arrived = await this.signOn.arrive(challenge, this.origin(request), request.url);
    if (arrived.purpose === 'signature') return `/signed-on?id=${arrived.signedOn}`;
    if (arrived.purpose === 'link') return '/signed-on';
    setSessionCookie(reply, this.origin(request), await this.signIn.begin(arrived.personId));
    return '/';
  }

  private sent(reply: FastifyReply, request: FastifyRequest, begun: { address: string; challenge: string }): object {
    const secure = this.origin(request).protocol === 'https:';
    const cookie = { path: '/api/sign-on', httpOnly: true, sameSite: 'lax', secure, maxAge: SECONDS } as const;
    void reply.setCookie(COOKIE, begun.challenge, cookie);
    return { address: begun.address };
  }

  private origin(request: FastifyRequest): URL {
    return originOf(this.publicUrl, request);
  }
}
