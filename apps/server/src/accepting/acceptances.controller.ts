import { Body, Controller, Get, HttpCode, Inject, Param, Post, Query } from '@nestjs/common';
import { ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Store } from '#store';
import { type Called, Calling } from '../http/called.js';
import { ID } from '../http/id.pipe.js';
import { once } from '../http/once.js';
import { STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { SignInService } from '../people/sign-in.service.js';
import { AcceptancesService } from './acceptances.service.js';
import { AcceptanceBody, AcceptanceQuery } from './bodies.js';

/** The aircraft, accepted or declined for one flight. */
@ApiTags('acceptance')
@Controller('api/aircraft/:id/flights/:flight/acceptance')
export class AcceptancesController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly acceptances: AcceptancesService,
    private readonly signIn: SignInService,
  ) {}

  @Get()
  @ApiOperation({ summary: 'What the commander is shown for this flight, and what was accepted or declined.' })
  @ApiOkResponse({ schema: ref('AcceptanceView') })
  view(@Calling() { session, id }: Called, @Param('flight', ID) flight: string): Promise<object> {
    const { operatorId, personId } = session;
    return this.store.withOperator(operatorId, personId, (tx) => this.acceptances.view(tx, id, flight));
  }

  @Get('statement')
  @ApiOperation({ summary: 'The statement that an acceptance would certify.' })
  @ApiOkResponse({ schema: ref('Statement') })
  statement(
    @Calling() { session, id }: Called,
    @Param('flight', ID) flight: string,
    @Query() { role, answer }: AcceptanceQuery,
  ): Promise<object> {
    const { operatorId, personId } = session;
    return this.store.withOperator(operatorId, personId, (tx) =>
      this.acceptances.statement(tx, id, flight, role, answer === 'yes'),
    );
  }

  @Post()
  @HttpCode(200)
  @ApiHeader({ name: 'Idempotency-Key', required: true, description: 'A fresh UUID for each act.' })
  @ApiOperation({ summary: 'Accept the aircraft for this flight with what is open, or decline it with a reason.' })
  @ApiOkResponse({ schema: ref('AcceptanceGiven') })
  async accept(
    @Calling() calling: Called,
    @Param('flight', ID) flightId: string,
    @Body() body: AcceptanceBody,
  ): Promise<object> {
    const { session, request, reply, id } = calling;
    const proof = await this.signIn.proveAgain(session, body.sign, request);
    return once(this.store, session, request, reply, async (tx) => ({
      status: 200,
      body: await this.acceptances.accept(tx, { session, proof }, { aircraftId: id, flightId }, body),
    }));
  }
}
