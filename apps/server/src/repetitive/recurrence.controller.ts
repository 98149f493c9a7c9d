import { Body, Controller, Get, HttpCode, Inject, Post, Query } from '@nestjs/common';
import { ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Store } from '#store';
import { type Called, Calling } from '../http/called.js';
import { etag, seenVersion } from '../http/headers.js';
import { once } from '../http/once.js';
import { STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { SignInService } from '../people/sign-in.service.js';
import { RecurrenceBody, RecurrenceQuery } from './bodies.js';
import { RecurrenceService } from './recurrence.service.js';

/** Whether a write-up is one of a defect that keeps coming back. */
@ApiTags('repetitive defects')
@Controller('api/defects/:id/recurrence')
export class RecurrenceController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly recurrence: RecurrenceService,
    private readonly signIn: SignInService,
  ) {}

  @Get()
  @ApiOperation({ summary: 'This write-up beside those before it that are like it, and whether that is repetitive.' })
  @ApiOkResponse({ schema: ref('RecurrenceView') })
  async view(@Calling() { session, reply, id }: Called): Promise<object> {
    const { operatorId, personId } = session;
    const { version, body } = await this.store.withOperator(operatorId, personId, (tx) =>
      this.recurrence.view(tx, id),
    );
    void reply.header('etag', etag(version));
    return body;
  }

  @Get('statement')
  @ApiOperation({ summary: 'The statement that the decision would certify.' })
  @ApiOkResponse({ schema: ref('Statement') })
  statement(@Calling() { session, id }: Called, @Query() { answer }: RecurrenceQuery): Promise<object> {
    const { operatorId, personId } = session;
    return this.store.withOperator(operatorId, personId, (tx) => this.recurrence.statement(tx, id, answer === 'yes'));
  }

  @Post()
  @HttpCode(200)
  @ApiHeader({ name: 'Idempotency-Key', required: true, description: 'A fresh UUID for each act.' })
  @ApiHeader({ name: 'If-Match', required: true, description: 'ETag of the defect as it was read.' })
  @ApiOperation({ summary: 'Decide, as maintenance control, whether it is a repetitive defect.' })
  @ApiOkResponse({ schema: ref('RecurrenceDecided') })
  async decide(@Calling() calling: Called, @Body() body: RecurrenceBody): Promise<object> {
    const { session, request, reply, id } = calling;
    const seen = seenVersion(request);
    const proof = await this.signIn.proveAgain(session, body.sign, request);
    return once(this.store, session, request, reply, async (tx) => ({
      status: 200,
      body: await this.recurrence.decide(tx, { session, proof, seen }, id, body),
    }));
  }
}
