import { Body, Controller, HttpCode, Post, Req, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { type Called, Calling } from '../../http/called.js';
import { CurrentSession, Roles, type Session } from '../../http/session.js';
import { ref } from '../../openapi/shape.js';
import { HoldBody, ReleaseHoldBody } from './holds.bodies.js';
import { HoldsService } from './holds.service.js';

const HOLDING_ROLES = ['quality', 'administrator'] as const;

@ApiTags('record')
@Controller('api/record/holds')
export class HoldsController {
  constructor(private readonly holds: HoldsService) {}

  @Roles(...HOLDING_ROLES)
  @Post()
  @HttpCode(201)
  @ApiHeader({ name: 'Idempotency-Key', required: true })
  @ApiOperation({ summary: 'Keep something beyond its period until it is released.' })
  @ApiCreatedResponse({ schema: ref('Holds') })
  place(
    @CurrentSession() session: Session,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
    @Body() body: HoldBody,
  ): Promise<object> {
    return this.holds.place({ session, request, reply }, body);
  }

  @Roles(...HOLDING_ROLES)
  @Post(':id/release')
  @HttpCode(200)
  @ApiHeader({ name: 'Idempotency-Key', required: true })
  @ApiOperation({ summary: 'Release what was kept beyond its period.' })
  @ApiOkResponse({ schema: ref('Holds') })
  release(@Calling() calling: Called, @Body() body: ReleaseHoldBody): Promise<object> {
    return this.holds.release(calling, body);
  }
}
