import { Body, Controller, Get, HttpCode, Inject, Param, Post, Req, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Store } from '#store';
import { type Called, Calling } from '../http/called.js';
import { seenVersion } from '../http/headers.js';
import { once } from '../http/once.js';
import { CurrentSession, type Session } from '../http/session.js';
import { STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { StationCoverBody } from './stations.body.js';
import { StationsService } from './stations.service.js';

const KEY = ApiHeader({ name: 'Idempotency-Key', required: true });

@ApiTags('fleet')
@Controller('api/stations')
export class StationsController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly stations: StationsService,
  ) {}

  @Get()
  @ApiOperation({ summary: 'Every station, and who is known to be authorised and equipped there.' })
  @ApiOkResponse({ schema: ref('Stations') })
  list(@CurrentSession() session: Session): Promise<object> {
    return this.store.withOperator(session.operatorId, session.personId, (tx) => this.stations.list(tx));
  }

  @Post(':code/people')
  @KEY
  @ApiOperation({ summary: 'Enter who is at a station and when, or that nobody is.' })
  @ApiCreatedResponse({ schema: ref('StationCoverEntered') })
  enter(
    @CurrentSession() session: Session,
    @Param('code') code: string,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
    @Body() body: StationCoverBody,
  ): Promise<object> {
    return once(this.store, session, request, reply, async (tx) => ({
      status: 201,
      body: await this.stations.enter(tx, session, code, body),
    }));
  }

  @Post('people/:id/ended')
  @HttpCode(200)
  @KEY
  @ApiHeader({ name: 'If-Match', required: true, description: 'Version of the line as it was read.' })
  @ApiOperation({ summary: 'It holds no longer.' })
  @ApiOkResponse({ schema: ref('StationCoverEntered') })
  end(@Calling() { session, request, reply, id }: Called): Promise<object> {
    const seen = seenVersion(request);
    return once(this.store, session, request, reply, async (tx) => {
      await this.stations.end(tx, session, id, seen);
      return { status: 200, body: { id } };
    });
  }
}
