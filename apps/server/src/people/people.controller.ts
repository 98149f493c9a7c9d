import { Body, Controller, Delete, Get, HttpCode, Inject, Post, Put, Req, Res } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type {} from '@fastify/cookie';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Store } from '#store';
import { checkBody } from '../http/body-hygiene.js';
import { SESSION_COOKIE } from '../http/session.guard.js';
import { CurrentPerson, Open, type SignedIn, WithoutOperator } from '../http/session.js';
import { CLOCK, type Clock, STORE, TZDB } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { ChangeSecretBody, ChooseOperatorBody, SignInBody } from './bodies.js';
import { settingsOf } from './operator-settings.js';
import { PasskeysService } from './passkeys.service.js';
import { PasskeyBody } from './proof.bodies.js';
import { setSessionCookie } from './session-cookie.js';
import { SignInService } from './sign-in.service.js';
import { namedOriginOf, originOf, PUBLIC_URL } from './site-address.js';

@ApiTags('people')
@Controller('api/session')
export class PeopleController {
  constructor(
    private readonly signInService: SignInService,
    private readonly passkeys: PasskeysService,
    @Inject(PUBLIC_URL) private readonly publicUrl: string | null,
    @Inject(STORE) private readonly store: Store,
    @Inject(TZDB) private readonly tzdb: string,
    @Inject(CLOCK) private readonly now: Clock,
  ) {}

  @Open()
  @Post()
  @HttpCode(204)
  @ApiOperation({ summary: 'Sign in; the session travels in a cookie.' })
  async signIn(@Body() body: SignInBody, @Req() request: FastifyRequest, @Res() reply: FastifyReply): Promise<void> {
    checkBody(request.body);
    const token = await this.signInService.signIn(body.name, body.secret);
    setSessionCookie(reply, originOf(this.publicUrl, request), token);
    void reply.status(204).send();
  }

  @Open()
  @Post('passkey-challenge')
  @HttpCode(200)
  @ApiOperation({ summary: 'What the browser is asked for, to sign in with a passkey.' })
  @ApiOkResponse({ schema: ref('PasskeyAsked') })
  passkeyChallenge(@Req() request: FastifyRequest): Promise<object> {
    return this.passkeys.toSignIn(namedOriginOf(this.publicUrl, request));
  }

  @Open()
  @Post('passkey')
  @HttpCode(204)
  @ApiOperation({ summary: 'Sign in with a passkey; the session travels in a cookie.' })
  async signInByPasskey(
    @Body() body: PasskeyBody,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const personId = await this.passkeys.signIn(body, namedOriginOf(this.publicUrl, request));
    setSessionCookie(reply, originOf(this.publicUrl, request), await this.signInService.begin(personId));
    void reply.status(204).send();
  }

  @WithoutOperator()
  @Get()
  @ApiOperation({ summary: 'Who is signed in, and for which operator.' })
  @ApiOkResponse({ schema: ref('SessionView') })
  async session(@CurrentPerson() person: SignedIn): Promise<object> {
    const operators = (await this.signInService.validMemberships(person.personId)).map(
      ({ operatorId, code, name, roles }) => ({ id: operatorId, code, name, roles }),
    );
    const chosen = operators.find(({ id }) => id === person.operatorId);
    return {
      at: this.now(),
      person: { id: person.personId, name: person.name },
      failedAttempts: await this.store.identity.failedAttempts(person.personId),
      means: await this.signInService.meansOf(person.personId),
      operators,
      operator: chosen ? await this.operatorView(chosen.id, person.personId) : null,
      roles: chosen?.roles ?? [],
    };
  }

  @WithoutOperator()
  @Put('operator')
  @HttpCode(204)
  @ApiOperation({ summary: 'Choose the operator to work for; one at a time.' })
  async choose(
    @CurrentPerson() person: SignedIn,
    @Body() body: ChooseOperatorBody,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const token = await this.signInService.chooseOperator(person.tokenHash, body.operator);
    setSessionCookie(reply, originOf(this.publicUrl, request), token);
    void reply.status(204).send();
  }

  @WithoutOperator()
  @Put('secret')
  @HttpCode(204)
  @ApiOperation({ summary: 'Change your secret; every other session of yours ends.' })
  async changeSecret(
    @CurrentPerson() person: SignedIn,
    @Body() { secret, fresh }: ChangeSecretBody,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    setSessionCookie(
      reply,
      originOf(this.publicUrl, request),
      await this.signInService.changeSecret(person, secret, fresh),
    );
    void reply.status(204).send();
  }

  @WithoutOperator()
  @Delete('failed-attempts')
  @HttpCode(204)
  @ApiOperation({ summary: 'Say that you saw how often somebody tried your name in vain; it is counted anew.' })
  async seen(@CurrentPerson() { personId }: SignedIn, @Res() reply: FastifyReply): Promise<void> {
    await this.store.identity.failedAttemptsSeen(personId);
    void reply.status(204).send();
  }

  @WithoutOperator()
  @Delete()
  @HttpCode(204)
  @ApiOperation({ summary: 'Sign out.' })
  async signOut(@CurrentPerson() person: SignedIn, @Res() reply: FastifyReply): Promise<void> {
    await this.signInService.signOut(person.tokenHash);
    void reply.clearCookie(SESSION_COOKIE, { path: '/' }).status(204).send();
  }

  private async operatorView(operatorId: string, personId: string): Promise<object> {
    const operator = await this.store.withOperator(operatorId, personId, (tx) => tx.operators.current());
    const { legalOriginal } = settingsOf(operator, this.tzdb);
    const { id, code, name, invented, base, tzdb: newest } = operator;
    const newerZoneData = newest !== null && newest > this.tzdb ? newest : null;
    return { id, code, name, invented, base, legalOriginal, newerZoneData };
  }
}
