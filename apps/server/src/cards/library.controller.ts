import { Body, Controller, Get, HttpCode, Inject, Post, Query, Req, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { CARDS_SCHEMA } from '#mel';
import type { Store, Tx } from '#store';
import { once } from '../http/once.js';
import { CurrentSession, Open, Roles, type Session } from '../http/session.js';
import { STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { SignInService } from '../people/sign-in.service.js';
import * as Bodies from './bodies.js';
import { CardLibraryService } from './library.service.js';

const KEY = ApiHeader({ name: 'Idempotency-Key', required: true });

@ApiTags('cards')
@Controller('api')
export class CardLibraryController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly library: CardLibraryService,
    private readonly signIn: SignInService,
  ) {}

  @Get('cards')
  @ApiOperation({ summary: 'Every work card in force, what it was written from, and whether its manual went on.' })
  @ApiOkResponse({ schema: ref('CardList') })
  list(@CurrentSession() session: Session): Promise<object> {
    return this.read(session, (tx) => this.library.list(tx));
  }

  @Open()
  @Get('cards/schema')
  @ApiOperation({ summary: 'JSON Schema 2020-12 of a library of work cards.' })
  schema(): object {
    return CARDS_SCHEMA;
  }

  @Post('cards')
  @HttpCode(201)
  @Roles('mel-engineer')
  @KEY
  @ApiOperation({ summary: 'Load a library of work cards. A bad file loads nothing and every error is named.' })
  @ApiCreatedResponse({ schema: ref('CardsLoaded') })
  load(
    @CurrentSession() session: Session,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
    @Body() body: Bodies.CardFileBody,
  ): Promise<object> {
    return this.once(session, request, reply, 201, (tx) => this.library.load(tx, session, body));
  }

  @Post('manual-revisions')
  @HttpCode(201)
  @Roles('engineer', 'mel-engineer', 'quality')
  @KEY
  @ApiOperation({
    summary: 'Record that a manual was revised. Cards written from an older revision need confirming.',
  })
  @ApiCreatedResponse({ schema: ref('ManualRevision') })
  recordRevision(
    @CurrentSession() session: Session,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
    @Body() body: Bodies.ManualRevisionBody,
  ): Promise<object> {
    return this.once(session, request, reply, 201, (tx) => this.library.recordRevision(tx, session, body));
  }

  @Get('card-confirmations/statement')
  @ApiOperation({ summary: 'The statement that the confirmation of a card would certify.' })
  @ApiOkResponse({ schema: ref('Statement') })
  statement(@CurrentSession() session: Session, @Query() query: Bodies.ConfirmationQuery): Promise<object> {
    return this.read(session, (tx) => this.library.statement(tx, query));
  }

  @Post('card-confirmations')
  @HttpCode(201)
  @KEY
  @ApiOperation({ summary: 'Confirm a card against the newest revision of its manual, signed.' })
  @ApiCreatedResponse({ schema: ref('CardConfirmed') })
  async confirm(
    @CurrentSession() session: Session,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
    @Body() body: Bodies.ConfirmationBody,
  ): Promise<object> {
    const proof = await this.signIn.proveAgain(session, body.sign, request);
    return this.once(session, request, reply, 201, (tx) => this.library.confirm(tx, { session, proof }, body));
  }

  private read<T>(session: Session, work: (tx: Tx) => Promise<T>): Promise<T> {
    return this.store.withOperator(session.operatorId, session.personId, work);
  }

  private once(
    session: Session,
    request: FastifyRequest,
    reply: FastifyReply,
    status: 200 | 201,
    work: (tx: Tx) => Promise<object>,
  ): Promise<object> {
    return once(this.store, session, request, reply, async (tx) => ({ status, body: await work(tx) }));
  }
}
