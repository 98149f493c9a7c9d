import { createHash } from 'node:crypto';
import {
  Body,
  Controller,
  Delete,
  Get,
  HttpCode,
  Inject,
  Param,
  ParseUUIDPipe,
  Post,
  Req,
  Res,
} from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiProduces, ApiTags } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Store, Tx } from '#store';
import { checkBody } from '../http/body-hygiene.js';
import { Problem } from '../http/problem.js';
import { CurrentSession, Open, type Session } from '../http/session.js';
import { STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { MakeFeedBody } from './bodies.js';
import { FeedsService } from './feeds.service.js';

const ENDING = '.ics';

/** Calendar feeds of the person signed in. */
@ApiTags('watch')
@Controller('api/calendar-feeds')
export class FeedsController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly feeds: FeedsService,
  ) {}

  @Get()
  @ApiOperation({ summary: 'Your calendar feeds; for an administrator those of everybody.' })
  @ApiOkResponse({ schema: ref('CalendarFeeds') })
  list(@CurrentSession() session: Session): Promise<object> {
    return this.inTransaction(session, (tx) => this.feeds.list(tx, session));
  }

  @Post()
  @ApiOperation({
    summary: 'Make a feed. Its address is told once and kept nowhere, so the request is not repeated under a key.',
  })
  @ApiCreatedResponse({ schema: ref('CalendarFeedMade') })
  make(@CurrentSession() session: Session, @Body() body: MakeFeedBody): Promise<object> {
    checkBody(body);
    return this.inTransaction(session, (tx) => this.feeds.make(tx, session, body));
  }

  @Delete(':id')
  @HttpCode(204)
  @ApiOperation({ summary: 'Revoke a feed: its address answers nothing from then on.' })
  async revoke(
    @CurrentSession() session: Session,
    @Param('id', ParseUUIDPipe) id: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    await this.inTransaction(session, (tx) => this.feeds.revoke(tx, session, id));
    void reply.status(204).send();
  }

  private inTransaction<T>(session: Session, work: (tx: Tx) => Promise<T>): Promise<T> {
    return this.store.withOperator(session.operatorId, session.personId, work);
  }
}

/** What calendar programs read. They cannot sign in: the address is the secret. */
@ApiTags('watch')
@Controller('api/calendar')
export class CalendarController {
  constructor(private readonly feeds: FeedsService) {}

  @Open()
  @Get(':token')
  @ApiOperation({ summary: 'The deadlines as iCalendar (RFC 5545), one event for each deferral with a fixed end.' })
  @ApiProduces('text/calendar')
  @ApiOkResponse({ schema: { type: 'string' } })
  async read(
    @Param('token') token: string,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const calendar = token.endsWith(ENDING) ? await this.feeds.read(token.slice(0, -ENDING.length)) : null;
    if (calendar === null) throw new Problem('not-found', 'There is no calendar at this address.');
    const etag = `"${createHash('sha256').update(calendar).digest('hex').slice(0, 32)}"`;
    void reply.header('cache-control', 'private, no-cache').header('etag', etag);
    if (request.headers['if-none-match'] === etag) {
      void reply.status(304).send();
      return;
    }
    void reply
      .header('content-type', 'text/calendar; charset=utf-8')
      .header('content-disposition', 'inline; filename="deadlines.ics"')
      .header('referrer-policy', 'no-referrer')
      .send(calendar);
  }
}
