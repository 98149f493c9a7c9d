import { Controller, Get, Inject, Param, Query, Res } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import type { Store, Tx } from '#store';
import { etag } from '../http/headers.js';
import { Id } from '../http/fields.js';
import { ID } from '../http/id.pipe.js';
import { CurrentSession, type Session } from '../http/session.js';
import { STORE } from '../http/tokens.js';
import { DispatchService } from '../dispatch/dispatch.service.js';
import { ref } from '../openapi/shape.js';
import { FleetService } from './fleet.service.js';

export class AnswerQuery {
  @Id({ description: 'The flight; absent asks without one.', optional: true })
  flight?: string;
}

@ApiTags('fleet')
@Controller('api')
export class FleetController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly fleetService: FleetService,
    private readonly dispatch: DispatchService,
  ) {}

  @Get('fleet')
  @ApiOperation({ summary: 'Every aircraft: what is open, the next deadline, the answer for its next flight.' })
  @ApiOkResponse({ schema: ref('Fleet') })
  fleet(@CurrentSession() session: Session): Promise<object> {
    return this.read(session, (tx) => this.fleetService.fleet(tx));
  }

  @Get('aircraft/:id')
  @ApiOperation({ summary: 'One aircraft: open items, what is left on it, its next flights.' })
  @ApiOkResponse({ schema: ref('AircraftView') })
  async aircraft(
    @CurrentSession() session: Session,
    @Param('id', ID) id: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<object> {
    const view = await this.read(session, (tx) => this.fleetService.aircraft(tx, id));
    void reply.header('etag', etag(view.version));
    return view;
  }

  @Get('aircraft/:id/answer')
  @ApiOperation({ summary: 'May it fly this flight, with what is open and recorded, and why.' })
  @ApiOkResponse({ schema: ref('Verdict') })
  answer(
    @CurrentSession() session: Session,
    @Param('id', ID) id: string,
    @Query() query: AnswerQuery,
  ): Promise<object> {
    return this.read(session, (tx) => this.dispatch.answer(tx, { aircraftId: id, flightId: query.flight ?? null }));
  }

  @Get('aircraft/:id/questions')
  @ApiOperation({ summary: 'Which question to ask next, so that the answer is settled soonest.' })
  @ApiOkResponse({ schema: ref('QuestionPlan') })
  questions(
    @CurrentSession() session: Session,
    @Param('id', ID) id: string,
    @Query() query: AnswerQuery,
  ): Promise<object> {
    return this.read(session, (tx) => this.dispatch.questions(tx, id, query.flight ?? null));
  }

  @Get('aircraft/:id/what-helps')
  @ApiOperation({
    summary: 'Where the answer is no or not settled: other rows, the least to fix, why rows are refused.',
  })
  @ApiOkResponse({ schema: ref('WhatHelps') })
  whatHelps(
    @CurrentSession() session: Session,
    @Param('id', ID) id: string,
    @Query() query: AnswerQuery,
  ): Promise<object> {
    return this.read(session, (tx) => this.dispatch.whatHelps(tx, id, query.flight ?? null));
  }

  private read<T>(session: Session, work: (tx: Tx) => Promise<T>): Promise<T> {
    return this.store.withOperator(session.operatorId, session.personId, work);
  }
}
