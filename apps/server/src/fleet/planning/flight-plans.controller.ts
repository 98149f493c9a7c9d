import { Body, Controller, HttpCode, Inject, Post, Req, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiHeader, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Store } from '#store';
import { once } from '../../http/once.js';
import { CurrentSession, Roles, type Session } from '../../http/session.js';
import { STORE } from '../../http/tokens.js';
import { ref } from '../../openapi/shape.js';
import { FlightPlanBody } from './bodies.js';
import { FlightPlansService } from './flight-plans.service.js';

@ApiTags('fleet')
@Controller('api/flight-plans')
export class FlightPlansController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly plans: FlightPlansService,
  ) {}

  @Roles('maintenance-control', 'dispatcher')
  @Post()
  @HttpCode(201)
  @ApiHeader({ name: 'Idempotency-Key', required: true })
  @ApiOperation({ summary: 'Plan a whole list of flights, or none of it.' })
  @ApiCreatedResponse({ schema: ref('FlightsPlanned') })
  plan(
    @CurrentSession() session: Session,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
    @Body() { text }: FlightPlanBody,
  ): Promise<object> {
    return once(this.store, session, request, reply, async (tx) => ({
      status: 201,
      body: await this.plans.plan(tx, session, text),
    }));
  }
}
