import { Body, Controller, Get, HttpCode, Inject, Post, Req, Res } from '@nestjs/common';
import { ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Store } from '#store';
import { checkBody } from '../http/body-hygiene.js';
import { CurrentSession, Roles, type Session } from '../http/session.js';
import { STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { ConfirmZoneDataBody } from './bodies.js';
import { ZoneDataService } from './zone-data.service.js';

@ApiTags('zone data')
@Controller('api/zone-data')
export class ZoneDataController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly zoneData: ZoneDataService,
  ) {}

  @Get()
  @ApiOperation({
    summary: 'Which open deadlines newer time-zone data ends at another instant, and which end counts.',
  })
  @ApiOkResponse({ schema: ref('ZoneDataView') })
  view(@CurrentSession() session: Session): Promise<object> {
    return this.store.withOperator(session.operatorId, session.personId, (tx) => this.zoneData.view(tx));
  }

  @Get('statement')
  @ApiOperation({ summary: 'What a person certifies who confirms them.' })
  @ApiOkResponse({ schema: ref('Statement') })
  statement(@CurrentSession() session: Session): Promise<object> {
    return this.store.withOperator(session.operatorId, session.personId, (tx) => this.zoneData.statement(tx));
  }

  @Post('confirmation')
  @HttpCode(200)
  @Roles('quality', 'engineer')
  @ApiHeader({ name: 'Idempotency-Key', required: true, description: 'A fresh UUID for each confirmation.' })
  @ApiOperation({ summary: 'Confirm by signature that these deadlines end as the newer data says.' })
  @ApiOkResponse({ schema: ref('ZoneDataView') })
  confirm(
    @CurrentSession() session: Session,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
    @Body() body: ConfirmZoneDataBody,
  ): Promise<object> {
    checkBody(body);
    return this.zoneData.confirm({ session, request, reply }, body.sign);
  }
}
