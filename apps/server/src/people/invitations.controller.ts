import { Body, Controller, Get, HttpCode, Inject, Post, Req, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Store } from '#store';
import { checkBody } from '../http/body-hygiene.js';
import { type Called, Calling } from '../http/called.js';
import {
  CurrentPerson,
  CurrentSession,
  Roles,
  type Session,
  type SignedIn,
  WithoutOperator,
} from '../http/session.js';
import { STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { CodeBody, InvitationBody, TakeUpBody } from './account-bodies.js';
import { InvitationsService } from './invitations.service.js';

const KEY = ApiHeader({ name: 'Idempotency-Key', required: true });

/** Invitations to work for one more operator: made by an administrator, taken up by whoever holds the code. */
@ApiTags('people')
@Controller('api')
export class InvitationsController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly invitations: InvitationsService,
  ) {}

  @Roles('administrator')
  @Get('invitations')
  @ApiOperation({ summary: 'Invitations that were neither taken up nor withdrawn, with why one lets nobody in.' })
  @ApiOkResponse({ schema: ref('Invitations') })
  list(@CurrentSession() { operatorId, personId }: Session): Promise<object> {
    return this.store.withOperator(operatorId, personId, (tx) => this.invitations.open(tx));
  }

  @Roles('administrator')
  @Post('invitations')
  @HttpCode(201)
  @KEY
  @ApiOperation({
    summary: 'Invite somebody who has an account here already. The code is told once; it names nobody.',
  })
  @ApiCreatedResponse({ schema: ref('InvitationMade') })
  invite(
    @CurrentSession() session: Session,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
    @Body() body: InvitationBody,
  ): Promise<object> {
    return this.invitations.invite({ session, request, reply }, body);
  }

  @Roles('administrator')
  @Post('invitations/:id/withdrawal')
  @HttpCode(200)
  @KEY
  @ApiOperation({ summary: 'Withdraw an invitation that nobody has taken up.' })
  @ApiOkResponse({ schema: ref('InvitationWithdrawn') })
  withdraw(@Calling() called: Called): Promise<object> {
    return this.invitations.withdraw(called);
  }

  @WithoutOperator()
  @Post('session/invitation')
  @HttpCode(200)
  @ApiOperation({ summary: 'What the code of an invitation is for, and the words to sign. Nothing is stored.' })
  @ApiOkResponse({ schema: ref('InvitationSeen') })
  look(@CurrentPerson() person: SignedIn, @Body() body: CodeBody): Promise<object> {
    checkBody(body);
    return this.invitations.look(person, body.code);
  }

  @WithoutOperator()
  @Post('session/memberships')
  @HttpCode(200)
  @ApiOperation({ summary: 'Take up an invitation, signed: from then on you work for that operator, too.' })
  @ApiOkResponse({ schema: ref('InvitationTaken') })
  takeUp(
    @CurrentPerson() person: SignedIn,
    @Req() request: FastifyRequest,
    @Body() body: TakeUpBody,
  ): Promise<object> {
    checkBody(request.body);
    return this.invitations.takeUp(person, body, request);
  }
}
