import { Body, Controller, Get, HttpCode, Inject, Param, Post, Put, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Store, Tx } from '#store';
import { type Called, Calling } from '../http/called.js';
import { seenVersion } from '../http/headers.js';
import { ID } from '../http/id.pipe.js';
import { once } from '../http/once.js';
import { CurrentSession, Roles, type Session } from '../http/session.js';
import { STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { LegBody, LegsQuery } from './bodies.js';
import { LegsService } from './legs.service.js';
import { legLine, legsView, namesOf } from './views.js';

const KEY = ApiHeader({ name: 'Idempotency-Key', required: true, description: 'A fresh UUID for each act.' });

@ApiTags('movements')
@Controller('api/aircraft/:id/legs')
export class LegsController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly legs: LegsService,
  ) {}

  @Get()
  @ApiOperation({ summary: 'What the aircraft flew, with earlier versions, and delays beside its defects.' })
  @ApiOkResponse({ schema: ref('AircraftLegs') })
  list(@CurrentSession() session: Session, @Param('id', ID) id: string, @Query() query: LegsQuery): Promise<object> {
    return this.store.withOperator(session.operatorId, session.personId, async (tx) =>
      legsView(tx, await this.legs.ofAircraft(tx, id, query)),
    );
  }

  @Post()
  @HttpCode(201)
  @Roles('dispatcher', 'maintenance-control', 'engineer')
  @KEY
  @ApiOperation({ summary: 'Enter a leg by hand.' })
  @ApiCreatedResponse({ schema: ref('LegWritten') })
  enter(@Calling() { session, request, reply, id }: Called, @Body() body: LegBody): Promise<object> {
    return once(this.store, session, request, reply, async (tx) => {
      const written = await this.legs.enter(tx, session, id, body);
      return { status: 201, body: await writtenView(tx, written), version: written.leg.version };
    });
  }

  @Put(':leg')
  @HttpCode(200)
  @Roles('dispatcher', 'maintenance-control', 'engineer')
  @KEY
  @ApiHeader({ name: 'If-Match', required: true, description: 'Version of the leg as it was read, in quotes.' })
  @ApiOperation({ summary: 'Correct a leg: another version is added, and what stood before stays readable.' })
  @ApiOkResponse({ schema: ref('LegWritten') })
  correct(
    @Calling() { session, request, reply, id }: Called,
    @Param('leg', ID) leg: string,
    @Body() body: LegBody,
  ): Promise<object> {
    const seen = seenVersion(request);
    return once(this.store, session, request, reply, async (tx) => {
      const written = await this.legs.correct(tx, session, id, leg, seen, body);
      return { status: 200, body: await writtenView(tx, written), version: written.leg.version };
    });
  }
}

async function writtenView(tx: Tx, { leg, items, answers }: Awaited<ReturnType<LegsService['enter']>>) {
  return { leg: legLine(leg, await namesOf(tx, [leg.personId])), items, answers };
}
