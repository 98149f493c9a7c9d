import { Body, Controller, Get, HttpCode, Inject, Param, Post, Put, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Store } from '#store';
import { type Called, Calling } from '../../http/called.js';
import { seenVersion } from '../../http/headers.js';
import { ID } from '../../http/id.pipe.js';
import { once } from '../../http/once.js';
import { STORE } from '../../http/tokens.js';
import { ref } from '../../openapi/shape.js';
import { SignInService } from '../../people/sign-in.service.js';
import { EngineCountBody, EngineStatementQuery, WithdrawCountBody } from './bodies.js';
import { EnginesService } from './engines.service.js';

const KEY = ApiHeader({ name: 'Idempotency-Key', required: true, description: 'A fresh UUID for each act.' });
const SEEN = ApiHeader({ name: 'If-Match', required: true, description: 'Version as it was read, in quotes.' });
const WRITTEN = { schema: ref('EngineCounted') };

/** The counters of the engines of one aircraft. */
@ApiTags('movements')
@Controller('api/aircraft/:id/engines')
export class EnginesController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly engines: EnginesService,
    private readonly signIn: SignInService,
  ) {}

  @Get()
  @ApiOperation({ summary: 'The counters of each engine, and every statement they come from, with history.' })
  @ApiOkResponse({ schema: ref('EnginesView') })
  view(@Calling() { session, id }: Called): Promise<object> {
    return this.store.withOperator(session.operatorId, session.personId, (tx) => this.engines.view(tx, id));
  }

  @Get('statement')
  @ApiOperation({ summary: 'The statement that a signature would certify.' })
  @ApiOkResponse({ schema: ref('Statement') })
  statement(@Calling() { session, id }: Called, @Query() { act }: EngineStatementQuery): Promise<object> {
    const { operatorId, personId } = session;
    return this.store.withOperator(operatorId, personId, (tx) => this.engines.statement(tx, id, act));
  }

  @Post()
  @HttpCode(201)
  @KEY
  @ApiOperation({ summary: 'State, signed, what the counters of an engine read, or what it used that no leg tells.' })
  @ApiCreatedResponse(WRITTEN)
  async enter(@Calling() { session, request, reply, id }: Called, @Body() body: EngineCountBody): Promise<object> {
    const proof = await this.signIn.proveAgain(session, body.sign, request);
    return once(this.store, session, request, reply, async (tx) => {
      const written = await this.engines.enter(tx, { session, proof, sign: body.sign }, id, body);
      return { status: 201, body: written, version: written.version };
    });
  }

  @Put(':count')
  @KEY
  @SEEN
  @ApiOperation({ summary: 'Correct it, signed: another version is added, and what stood before stays readable.' })
  @ApiOkResponse(WRITTEN)
  correct(
    @Calling() calling: Called,
    @Param('count', ID) count: string,
    @Body() body: EngineCountBody,
  ): Promise<object> {
    return this.changed(calling, count, body);
  }

  @Post(':count/withdrawn')
  @HttpCode(200)
  @KEY
  @SEEN
  @ApiOperation({ summary: 'Sign that it was never so: it counts no more and stays readable.' })
  @ApiOkResponse(WRITTEN)
  withdraw(
    @Calling() calling: Called,
    @Param('count', ID) count: string,
    @Body() body: WithdrawCountBody,
  ): Promise<object> {
    return this.changed(calling, count, body);
  }

  private async changed(
    { session, request, reply, id }: Called,
    countId: string,
    body: EngineCountBody | WithdrawCountBody,
  ): Promise<object> {
    const seen = seenVersion(request);
    const proof = await this.signIn.proveAgain(session, body.sign, request);
    return once(this.store, session, request, reply, async (tx) => {
      const signing = { session, proof, sign: body.sign };
      const written = await this.engines.correct(tx, signing, { aircraftId: id, countId, seen }, body);
      return { status: 200, body: written, version: written.version };
    });
  }
}
