import { Body, Controller, Get, HttpCode, Inject, Post } from '@nestjs/common';
import { ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Store } from '#store';
import { type Called, Calling } from '../http/called.js';
import { CurrentSession, Roles, type Session } from '../http/session.js';
import { STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { LeavingBody } from './bodies.js';
import { MembersService } from './members.service.js';

@ApiTags('people')
@Controller('api/people')
export class MembersController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly members: MembersService,
  ) {}

  @Roles('administrator', 'quality', 'maintenance-control')
  @Get()
  @ApiOperation({ summary: 'Who works for the operator, and what each may sign.' })
  @ApiOkResponse({ schema: ref('Members') })
  list(@CurrentSession() { operatorId, personId }: Session): Promise<object> {
    return this.store.withOperator(operatorId, personId, (tx) => this.members.list(tx));
  }

  @Roles('administrator')
  @Post(':id/leaving')
  @HttpCode(200)
  @ApiHeader({ name: 'Idempotency-Key', required: true })
  @ApiOperation({ summary: 'Somebody leaves now: access ends at once, what was signed stays good.' })
  @ApiOkResponse({ schema: ref('MemberChanged') })
  leaves(@Calling() calling: Called, @Body() body: LeavingBody): Promise<object> {
    return this.members.leaves(calling, body);
  }
}
