import { Body, Controller, Get, HttpCode, Inject, Param, Post, Put, Query, Req, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Store } from '#store';
import { type Called, Calling } from '../http/called.js';
import { ID } from '../http/id.pipe.js';
import { CurrentSession, Roles, type Session } from '../http/session.js';
import { STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { AccountBody, AuthorisationBody, AuthorisationQuery, ReasonBody, RolesBody } from './account-bodies.js';
import { AccountsService } from './accounts.service.js';
import { AuthorisationsService } from './authorisations.service.js';

const KEY = ApiHeader({ name: 'Idempotency-Key', required: true });
const CHANGED = ApiOkResponse({ schema: ref('MemberChanged') });

/** Accounts and what they may sign: made, changed, locked, granted and taken back. */
@ApiTags('people')
@Controller('api/people')
export class AccountsController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly accounts: AccountsService,
    private readonly authorisations: AuthorisationsService,
  ) {}

  @Roles('administrator')
  @Post()
  @HttpCode(200)
  @KEY
  @ApiOperation({ summary: 'Make an account. Its first secret is told once, and serves to choose an own one.' })
  @ApiOkResponse({ schema: ref('AccountMade') })
  create(
    @CurrentSession() session: Session,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
    @Body() body: AccountBody,
  ): Promise<object> {
    return this.accounts.create({ session, request, reply }, body);
  }

  @Roles('administrator')
  @Post(':id/first-secret')
  @HttpCode(200)
  @KEY
  @ApiOperation({ summary: 'Another first secret, while the person has chosen no own one.' })
  @ApiOkResponse({ schema: ref('AccountMade') })
  anotherFirst(@Calling() calling: Called): Promise<object> {
    return this.accounts.anotherFirst(calling);
  }

  @Roles('administrator')
  @Put(':id/roles')
  @KEY
  @ApiOperation({ summary: 'Change the roles of somebody else.' })
  @CHANGED
  roles(@Calling() calling: Called, @Body() body: RolesBody): Promise<object> {
    return this.accounts.roles(calling, body);
  }

  @Roles('administrator', 'quality')
  @Post(':id/lock')
  @HttpCode(200)
  @KEY
  @ApiOperation({
    summary: 'Lock the access of somebody else: every session ends, nothing that was signed is touched.',
  })
  @CHANGED
  lock(@Calling() calling: Called, @Body() body: ReasonBody): Promise<object> {
    return this.accounts.lock(calling, body);
  }

  @Roles('administrator')
  @Post(':id/unlock')
  @HttpCode(200)
  @KEY
  @ApiOperation({ summary: 'Unlock it, and free a name that wrong secrets have locked.' })
  @CHANGED
  unlock(@Calling() calling: Called, @Body() body: ReasonBody): Promise<object> {
    return this.accounts.unlock(calling, body);
  }

  @Roles('quality')
  @Get(':id/authorisation-statement')
  @ApiOperation({ summary: 'What is certified when a standing authorisation is granted.' })
  @ApiOkResponse({ schema: ref('Statement') })
  statement(
    @CurrentSession() { operatorId, personId }: Session,
    @Param('id', ID) id: string,
    @Query() query: AuthorisationQuery,
  ): Promise<object> {
    return this.store.withOperator(operatorId, personId, (tx) => this.authorisations.statement(tx, id, query));
  }

  @Roles('quality')
  @Post(':id/authorisations')
  @HttpCode(201)
  @KEY
  @ApiOperation({ summary: 'Grant somebody else a standing authorisation with its scope and validity, signed.' })
  @ApiCreatedResponse({ schema: ref('MemberChanged') })
  grant(@Calling() calling: Called, @Body() body: AuthorisationBody): Promise<object> {
    return this.authorisations.grant(calling, body);
  }

  @Roles('quality', 'administrator')
  @Post(':id/authorisations/:authorisation/revocation')
  @HttpCode(200)
  @KEY
  @ApiOperation({ summary: 'Revoke an authorisation from this moment on.' })
  @CHANGED
  revoke(
    @Calling() calling: Called,
    @Param('authorisation', ID) authorisation: string,
    @Body() body: ReasonBody,
  ): Promise<object> {
    return this.authorisations.revoke(calling, authorisation, body);
  }
}
