import { Body, Controller, Get, HttpCode, Inject, Param, Post, Put, Query } from '@nestjs/common';
import { ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { FACTS } from '#mel';
import type { Store } from '#store';
import { type Called, Calling } from '../http/called.js';
import { checkBody } from '../http/body-hygiene.js';
import { OneOf, Text } from '../http/fields.js';
import { ID } from '../http/id.pipe.js';
import { once } from '../http/once.js';
import { CurrentSession, type Session } from '../http/session.js';
import { STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { SignInService } from '../people/sign-in.service.js';
import { FactBody, JudgementBody, QuestionBody } from './bodies.js';
import { changesOf } from './changes.js';
import { DispatchService } from './dispatch.service.js';
import { NextFlightsService } from './next-flights.service.js';
import { FactsService, factView } from './facts.service.js';
import { JudgementsService } from './judgements.service.js';

export class JudgementQuery {
  @Text(160, { description: '`<entry>/<row>/<judgement>`, or `combination`.' })
  judgement!: string;

  @OneOf(['yes', 'no'], { description: 'The answer that is to be signed.' })
  answer!: 'yes' | 'no';
}

@ApiTags('dispatch')
@Controller('api')
export class DispatchController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly dispatch: DispatchService,
    private readonly ahead: NextFlightsService,
    private readonly facts: FactsService,
    private readonly judgements: JudgementsService,
    private readonly signIn: SignInService,
  ) {}

  @Post('dispatch/questions')
  @HttpCode(200)
  @ApiOperation({ summary: 'May it fly, if these rows were recorded and these changes made? Nothing is stored.' })
  @ApiOkResponse({ schema: ref('Verdict') })
  ask(@CurrentSession() session: Session, @Body() body: QuestionBody): Promise<object> {
    checkBody(body);
    return this.store.withOperator(session.operatorId, session.personId, (tx) =>
      this.dispatch.tryOut(tx, {
        aircraftId: body.aircraft,
        flightId: body.flight ?? null,
        proposals: body.propose,
        ...(body.changes === undefined ? {} : { changes: changesOf(body) }),
        ...(body.at === undefined ? {} : { at: new Date(body.at).toISOString() }),
      }),
    );
  }

  @Get('aircraft/:id/next-flights')
  @ApiOperation({
    summary: 'The flights planned for it, one after another: which breaks first, and what would save it.',
  })
  @ApiOkResponse({ schema: ref('NextFlights') })
  nextFlights(@CurrentSession() session: Session, @Param('id', ID) id: string): Promise<object> {
    return this.store.withOperator(session.operatorId, session.personId, (tx) => this.ahead.ofAircraft(tx, id));
  }

  @Get('facts')
  @ApiOperation({ summary: 'Every fact that can be asked for: its type, its choices, who may answer.' })
  @ApiOkResponse({ schema: ref('FactList') })
  list(): object {
    return { facts: FACTS.map(factView) };
  }

  @Put('aircraft/:id/facts')
  @HttpCode(200)
  @ApiHeader({ name: 'Idempotency-Key', required: true })
  @ApiOperation({ summary: 'Answer a question about the aircraft or a flight.' })
  @ApiOkResponse({ schema: ref('FactAnswered') })
  answer(@Calling() calling: Called, @Body() body: FactBody): Promise<object> {
    const { session, request, reply, id } = calling;
    return once(this.store, session, request, reply, async (tx) => ({
      status: 200,
      body: await this.facts.answer(tx, session, id, body),
    }));
  }

  @Get('aircraft/:id/judgement-statement')
  @ApiOperation({ summary: 'The statement that a judgement would certify.' })
  @ApiOkResponse({ schema: ref('Statement') })
  statement(@Calling() { session, id }: Called, @Query() query: JudgementQuery): Promise<object> {
    return this.store.withOperator(session.operatorId, session.personId, (tx) =>
      this.judgements.statement(tx, id, query.judgement, query.answer === 'yes'),
    );
  }

  @Post('aircraft/:id/judgements')
  @HttpCode(200)
  @ApiHeader({ name: 'Idempotency-Key', required: true })
  @ApiOperation({ summary: "Give a named person's judgement, signed." })
  @ApiOkResponse({ schema: ref('JudgementGiven') })
  async judge(@Calling() calling: Called, @Body() body: JudgementBody): Promise<object> {
    const { session, request, reply, id } = calling;
    const proof = await this.signIn.proveAgain(session, body.sign, request);
    return once(this.store, session, request, reply, async (tx) => ({
      status: 200,
      body: await this.judgements.judge(tx, { session, proof }, id, body),
    }));
  }
}
