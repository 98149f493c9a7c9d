import { Body, Controller, Get, HttpCode, Inject, Param, Post, Put, Req, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Store, Tx } from '#store';
import { type Called, Calling } from '../../http/called.js';
import { seenVersion } from '../../http/headers.js';
import { ID } from '../../http/id.pipe.js';
import { once } from '../../http/once.js';
import { CurrentSession, Roles, type Session } from '../../http/session.js';
import { STORE } from '../../http/tokens.js';
import { ref } from '../../openapi/shape.js';
import { AircraftEntriesService } from './aircraft-entries.service.js';
import { AircraftBody, FitChangeBody, FlightBody, OrganisationBody, ServiceBody, StationBody } from './bodies.js';
import { FlightEntriesService } from './flight-entries.service.js';
import { PlaceEntriesService } from './place-entries.service.js';

const KEY = ApiHeader({ name: 'Idempotency-Key', required: true });
const CHANGED = ApiOkResponse({ schema: ref('AircraftEntered') });
const SEEN = ApiHeader({ name: 'If-Match', required: true });

type Unsafe = Omit<Called, 'id'>;

/** What a fleet is made of: entered, changed and taken out by people, each time recorded. */
@ApiTags('fleet')
@Controller('api')
export class EnteringController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly aircraft: AircraftEntriesService,
    private readonly places: PlaceEntriesService,
    private readonly flights: FlightEntriesService,
  ) {}

  @Get('aircraft')
  @ApiOperation({ summary: 'Every aircraft as it was entered, and what the MEL of each type asks of one.' })
  @ApiOkResponse({ schema: ref('AircraftEntries') })
  list(@CurrentSession() session: Session): Promise<object> {
    return this.store.withOperator(session.operatorId, session.personId, (tx) => this.aircraft.list(tx));
  }

  @Roles('administrator', 'engineer')
  @Post('aircraft')
  @HttpCode(201)
  @KEY
  @ApiOperation({ summary: 'Enter an aircraft of the fleet.' })
  @ApiCreatedResponse({ schema: ref('AircraftEntered') })
  enter(
    @CurrentSession() session: Session,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
    @Body() body: AircraftBody,
  ): Promise<object> {
    return this.made({ session, request, reply }, (tx) => this.aircraft.enter(tx, session, body));
  }

  @Roles('administrator', 'engineer')
  @Put('aircraft/:id/fit')
  @KEY
  @SEEN
  @ApiOperation({ summary: 'Change serial, configuration and base of an aircraft, such as after a modification.' })
  @CHANGED
  change(@Calling() called: Called, @Body() body: FitChangeBody): Promise<object> {
    const { session, id, request } = called;
    const seen = seenVersion(request);
    return this.changed(called, (tx) => this.aircraft.change(tx, session, id, seen, body));
  }

  @Roles('administrator', 'engineer')
  @Post('aircraft/:id/retirement')
  @HttpCode(200)
  @KEY
  @SEEN
  @ApiOperation({ summary: 'An aircraft leaves the fleet; its history stays.' })
  @CHANGED
  retire(@Calling() called: Called, @Body() body: ServiceBody): Promise<object> {
    const { session, id, request } = called;
    const seen = seenVersion(request);
    return this.changed(called, (tx) => this.aircraft.retire(tx, session, id, seen, body));
  }

  @Roles('administrator', 'engineer')
  @Post('aircraft/:id/return')
  @HttpCode(200)
  @KEY
  @SEEN
  @ApiOperation({ summary: 'An aircraft that left the fleet comes back.' })
  @CHANGED
  bringBack(@Calling() called: Called, @Body() body: ServiceBody): Promise<object> {
    const { session, id, request } = called;
    const seen = seenVersion(request);
    return this.changed(called, (tx) => this.aircraft.bringBack(tx, session, id, seen, body));
  }

  @Roles('administrator', 'maintenance-control')
  @Post('stations')
  @HttpCode(201)
  @KEY
  @ApiOperation({ summary: 'Enter a station.' })
  @ApiCreatedResponse({ schema: ref('StationEntered') })
  station(
    @CurrentSession() session: Session,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
    @Body() body: StationBody,
  ): Promise<object> {
    return this.made({ session, request, reply }, (tx) => this.places.station(tx, session, body));
  }

  @Roles('administrator', 'quality')
  @Post('organisations')
  @HttpCode(201)
  @KEY
  @ApiOperation({ summary: 'Enter an organisation and the number of its approval.' })
  @ApiCreatedResponse({ schema: ref('OrganisationEntered') })
  organisation(
    @CurrentSession() session: Session,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
    @Body() body: OrganisationBody,
  ): Promise<object> {
    return this.made({ session, request, reply }, (tx) => this.places.organisation(tx, session, body));
  }

  @Get('aircraft/:id/flights')
  @ApiOperation({ summary: 'Every flight planned for an aircraft from now on.' })
  @ApiOkResponse({ schema: ref('PlannedFlights') })
  planned(@CurrentSession() session: Session, @Param('id', ID) id: string): Promise<object> {
    return this.store.withOperator(session.operatorId, session.personId, (tx) => this.flights.list(tx, id));
  }

  @Roles('maintenance-control', 'dispatcher')
  @Post('aircraft/:id/flights')
  @HttpCode(201)
  @KEY
  @ApiOperation({ summary: 'Plan a flight for an aircraft.' })
  @ApiCreatedResponse({ schema: ref('FlightEntered') })
  plan(@Calling() called: Called, @Body() body: FlightBody): Promise<object> {
    return this.made(called, (tx) => this.flights.plan(tx, called.session, called.id, body));
  }

  @Roles('maintenance-control', 'dispatcher')
  @Post('aircraft/:id/flights/:flight/cancellation')
  @HttpCode(200)
  @KEY
  @ApiOperation({ summary: 'Cancel a planned flight.' })
  @ApiOkResponse({ schema: ref('FlightEntered') })
  cancel(@Calling() called: Called, @Param('flight', ID) flight: string, @Body() body: ServiceBody): Promise<object> {
    return this.changed(called, (tx) => this.flights.cancel(tx, called.session, called.id, flight, body));
  }

  private made({ session, request, reply }: Unsafe, work: (tx: Tx) => Promise<object>): Promise<object> {
    return once(this.store, session, request, reply, async (tx) => ({ status: 201, body: await work(tx) }));
  }

  private changed({ session, request, reply }: Unsafe, work: (tx: Tx) => Promise<object>): Promise<object> {
    return once(this.store, session, request, reply, async (tx) => ({ status: 200, body: await work(tx) }));
  }
}
