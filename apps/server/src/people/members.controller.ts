import { Body, Controller, Get, HttpCode, Inject, Param, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Store } from '#store';
import { type Called, Calling } from '../http/called.js';
import { ID } from '../http/id.pipe.js';
import { CurrentSession, Roles, type Session } from '../http/session.js';
import { STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { ErasureBody, LeavingBody, OneOffBody, OneOffQuery } from './bodies.js';
import { ERASING_ROLES, ErasuresService } from './erasures.service.js';
import { MembersService } from './members.service.js';
import { ISSUING_ROLES, OneOffsService } from './one-offs.service.js';

@ApiTags('people')
@Controller('api/people')
export class MembersController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly members: MembersService,
    private readonly oneOffs: OneOffsService,
    private readonly erasures: ErasuresService,
  ) {}

  @Roles('administrator', 'quality', 'maintenance-control')
  @Get()
  @ApiOperation({ summary: 'Who works for the operator, and what each may sign.' })
  @ApiOkResponse({ schema: ref('Members') })
  list(@CurrentSession() { operatorId, personId }: Session): Promise<object> {
    return this.store.withOperator(operatorId, personId, (tx) => this.members.list(tx));
  }

  @Roles(...ISSUING_ROLES)
  @Get(':id/one-off-statement')
  @ApiOperation({ summary: 'What is certified when a one-off authorisation is issued.' })
  @ApiOkResponse({ schema: ref('Statement') })
  statement(
    @CurrentSession() { operatorId, personId }: Session,
    @Param('id', ID) id: string,
    @Query() query: OneOffQuery,
  ): Promise<object> {
    return this.store.withOperator(operatorId, personId, (tx) => this.oneOffs.statement(tx, id, query));
  }

  @Roles(...ISSUING_ROLES)
  @Post(':id/one-off')
  @HttpCode(201)
  @ApiHeader({ name: 'Idempotency-Key', required: true })
  @ApiOperation({ summary: 'Authorise somebody for one signature on one defect, signed.' })
  @ApiCreatedResponse({ schema: ref('MemberChanged') })
  issue(@Calling() calling: Called, @Body() body: OneOffBody): Promise<object> {
    return this.oneOffs.issue(calling, body);
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

  @Roles(...ERASING_ROLES)
  @Get(':id/erasure-statement')
  @ApiOperation({ summary: 'What is certified when the personal data of somebody who left are erased.' })
  @ApiOkResponse({ schema: ref('Statement') })
  erasureStatement(
    @CurrentSession() { operatorId, personId }: Session,
    @Param('id', ID) id: string,
  ): Promise<object> {
    return this.store.withOperator(operatorId, personId, (tx) => this.erasures.statement(tx, id));
  }

  @Roles(...ERASING_ROLES)
  @Get(':id/written-names')
  @ApiOperation({ summary: 'Where the name of somebody stands in what people wrote, which no erasure takes away.' })
  @ApiOkResponse({ schema: ref('WrittenNames') })
  writtenNames(@CurrentSession() { operatorId, personId }: Session, @Param('id', ID) id: string): Promise<object> {
    return this.store.withOperator(operatorId, personId, (tx) => this.erasures.writtenNames(tx, id));
  }

  @Roles(...ERASING_ROLES)
  @Post(':id/erasure')
  @HttpCode(200)
  @ApiHeader({ name: 'Idempotency-Key', required: true })
  @ApiOperation({ summary: 'Erase the personal data of somebody who left, signed; the record and its proofs stay.' })
  @ApiOkResponse({ schema: ref('PersonErased') })
  erase(@Calling() calling: Called, @Body() body: ErasureBody): Promise<object> {
    return this.erasures.erase(calling, body);
  }
}
