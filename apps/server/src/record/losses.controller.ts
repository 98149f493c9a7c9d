import { Body, Controller, Get, HttpCode, Inject, Param, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Store } from '#store';
import { type Called, Calling } from '../http/called.js';
import { ID } from '../http/id.pipe.js';
import { CurrentSession, Roles, type Session } from '../http/session.js';
import { STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { LossBody, LossQuery } from './losses.bodies.js';
import { LossesService, STATING_ROLES } from './losses.service.js';

@ApiTags('record')
@Controller('api/aircraft/:id/losses')
export class LossesController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly losses: LossesService,
  ) {}

  @Get()
  @ApiOperation({ summary: 'What of the record of this aircraft was lost and made anew, as it was stated.' })
  @ApiOkResponse({ schema: ref('Losses') })
  list(@CurrentSession() { operatorId, personId }: Session, @Param('id', ID) id: string): Promise<object> {
    return this.store.withOperator(operatorId, personId, (tx) => this.losses.list(tx, id));
  }

  @Roles(...STATING_ROLES)
  @Get('statement')
  @ApiOperation({ summary: 'What is certified when a loss is stated.' })
  @ApiOkResponse({ schema: ref('Statement') })
  statement(
    @CurrentSession() { operatorId, personId }: Session,
    @Param('id', ID) id: string,
    @Query() query: LossQuery,
  ): Promise<object> {
    return this.store.withOperator(operatorId, personId, (tx) => this.losses.statement(tx, id, query));
  }

  @Roles(...STATING_ROLES)
  @Post()
  @HttpCode(201)
  @ApiHeader({ name: 'Idempotency-Key', required: true })
  @ApiOperation({
    summary: 'State, signed, that part of the record was lost and made anew, and which authority was told.',
  })
  @ApiCreatedResponse({ schema: ref('Losses') })
  state(@Calling() calling: Called, @Body() body: LossBody): Promise<object> {
    return this.losses.state(calling, body);
  }
}
