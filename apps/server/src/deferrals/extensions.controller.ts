import { Body, Controller, Get, HttpCode, Inject, Param, Post, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiHeader, ApiOkResponse, ApiOperation, ApiProduces, ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import type { Store, Tx } from '#store';
import { type Called, Calling } from '../http/called.js';
import { etag } from '../http/headers.js';
import { ID } from '../http/id.pipe.js';
import { CurrentSession, Roles, type Session } from '../http/session.js';
import { STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { AuthorityDocumentsService } from './authority-documents.service.js';
import {
  AskExtensionBody,
  AuthorityDocumentBody,
  CloseRequestBody,
  GrantExtensionBody,
  NoticeBody,
} from './bodies.js';
import { ExtensionsService } from './extensions.service.js';
import { NoticesService } from './notices.service.js';

const KEY = ApiHeader({ name: 'Idempotency-Key', required: true, description: 'A fresh UUID for each act.' });
const SEEN = ApiHeader({ name: 'If-Match', required: true, description: 'ETag of the defect as it was read.' });

/** Extending the interval of one defect, and what an authority allows beyond it. */
@ApiTags('extensions')
@Controller('api/defects/:id')
export class ExtendingController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly extensions: ExtensionsService,
    private readonly documents: AuthorityDocumentsService,
  ) {}

  @Get('extension')
  @ApiOperation({ summary: 'What an extension granted now would give, or why the operator may not extend.' })
  @ApiOkResponse({ schema: ref('ExtensionOffer') })
  offer(@CurrentSession() session: Session, @Param('id', ID) id: string): Promise<object> {
    return this.store.withOperator(session.operatorId, session.personId, (tx) => this.extensions.offer(tx, id));
  }

  @Post('extension-request')
  @Roles('maintenance-control', 'engineer', 'quality')
  @KEY
  @SEEN
  @ApiOperation({ summary: 'Ask for an extension. A request that waits is replaced by this one.' })
  @ApiCreatedResponse({ schema: ref('ExtensionDone') })
  ask(@Calling() calling: Called, @Body() body: AskExtensionBody): Promise<object> {
    return this.extensions.ask(calling, calling.id, body);
  }

  @Post('extension-request/closed')
  @HttpCode(200)
  @Roles('maintenance-control', 'engineer', 'quality')
  @KEY
  @SEEN
  @ApiOperation({ summary: 'Withdraw your own request, or decline that of somebody else.' })
  @ApiOkResponse({ schema: ref('ExtensionDone') })
  close(@Calling() calling: Called, @Body() body: CloseRequestBody): Promise<object> {
    return this.extensions.close(calling, calling.id, body);
  }

  @Post('extension')
  @HttpCode(200)
  @KEY
  @SEEN
  @ApiOperation({ summary: 'Grant the extension that waits: another person, signed, before the interval ends.' })
  @ApiOkResponse({ schema: ref('ActDone') })
  grant(@Calling() calling: Called, @Body() body: GrantExtensionBody): Promise<object> {
    return this.extensions.grant(calling, calling.id, body);
  }

  @Post('authority-document')
  @HttpCode(200)
  @KEY
  @SEEN
  @ApiOperation({
    summary: 'Enter what an authority allows beyond the deadline. It carries the flights it covers and no others.',
  })
  @ApiOkResponse({ schema: ref('ActDone') })
  enter(@Calling() calling: Called, @Body() body: AuthorityDocumentBody): Promise<object> {
    return this.documents.enter(calling, calling.id, body);
  }
}

/** The register of all extensions of the operator, and their notices. */
@ApiTags('extensions')
@Controller('api/extensions')
export class ExtensionsController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly notices: NoticesService,
  ) {}

  @Get()
  @ApiOperation({ summary: 'Every extension of the operator, the newest first, with where its notice stands.' })
  @ApiOkResponse({ schema: ref('ExtensionRegister') })
  register(@CurrentSession() session: Session): Promise<object> {
    return this.read(session, (tx) => this.notices.register(tx));
  }

  @Get(':id')
  @ApiOperation({ summary: 'One extension.' })
  @ApiOkResponse({ schema: ref('ExtensionDone') })
  async one(
    @CurrentSession() session: Session,
    @Param('id', ID) id: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<object> {
    const view = await this.read(session, (tx) => this.notices.one(tx, id));
    void reply.header('etag', etag(view.version));
    return view.body;
  }

  @Get(':id/notice')
  @ApiOperation({ summary: 'The notice to the authority as a document to print.' })
  @ApiProduces('text/html')
  @ApiOkResponse({ schema: { type: 'string' } })
  async document(
    @CurrentSession() session: Session,
    @Param('id', ID) id: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const { text } = await this.read(session, (tx) => this.notices.document(tx, id));
    void reply
      .header('content-type', 'text/html; charset=utf-8')
      .header('cache-control', 'private, no-store')
      .header('content-security-policy', "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'")
      .send(text);
  }

  @Post(':id/notice')
  @HttpCode(200)
  @Roles('maintenance-control', 'engineer', 'quality')
  @KEY
  @ApiHeader({ name: 'If-Match', required: true, description: 'ETag of the extension as it was read.' })
  @ApiOperation({ summary: 'Note that the notice was sent, or acknowledged, with its reference.' })
  @ApiOkResponse({ schema: ref('ExtensionDone') })
  note(@Calling() calling: Called, @Body() body: NoticeBody): Promise<object> {
    return this.notices.note(calling, calling.id, body);
  }

  private read<T>(session: Session, work: (tx: Tx) => Promise<T>): Promise<T> {
    return this.store.withOperator(session.operatorId, session.personId, work);
  }
}
