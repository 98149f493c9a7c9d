import { createHash } from 'node:crypto';
import { Body, Controller, Delete, Get, Inject, Param, Post, Req, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiHeader, ApiOkResponse, ApiOperation, ApiProduces, ApiTags } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Store } from '#store';
import { type Called, Calling } from '../http/called.js';
import { Problem } from '../http/problem.js';
import { CurrentSession, Open, type Session } from '../http/session.js';
import { STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { MakeFeedBody } from './bodies.js';
import { FeedsService } from './feeds.service.js';

const ENDING = '.ics';
const KEY = ApiHeader({ name: 'Idempotency-Key', required: true, description: 'A fresh UUID for each request.' });

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
    return this.store.withOperator(session.operatorId, session.personId, (tx) => this.feeds.list(tx, session));
  }

  @Post()
  @KEY
  @ApiOperation({ summary: 'Make a feed. Its address is told with this answer and kept nowhere.' })
  @ApiCreatedResponse({ schema: ref('CalendarFeedMade') })
  make(
    @CurrentSession() session: Session,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
    @Body() body: MakeFeedBody,
  ): Promise<object> {
    return this.feeds.make({ session, request, reply }, body);
  }

  @Delete(':id')
  @KEY
  @ApiOperation({ summary: 'Revoke a feed: its address answers nothing from then on.' })
  @ApiOkResponse({ schema: ref('CalendarFeedRevoked') })
  revoke(@Calling() calling: Called): Promise<object> {
    return this.feeds.revoke(calling, calling.id);
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
