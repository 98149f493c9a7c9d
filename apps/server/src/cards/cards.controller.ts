import { Body, Controller, Get, HttpCode, Inject, Param, Post, Res } from '@nestjs/common';
import { ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import type { Store } from '#store';
import { type Called, Calling } from '../http/called.js';
import { etag } from '../http/headers.js';
import { ID } from '../http/id.pipe.js';
import { CurrentSession, type Session } from '../http/session.js';
import { STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import * as Bodies from './bodies.js';
import { CardsService } from './cards.service.js';
import { SecondPersons } from './second-persons.service.js';

const KEY = ApiHeader({ name: 'Idempotency-Key', required: true, description: 'A fresh UUID for each act.' });
const SEEN = ApiHeader({ name: 'If-Match', required: true, description: 'ETag of the defect as it was read.' });
const DONE = ApiOkResponse({ schema: ref('ActDone') });

/** Work by cards on one defect. */
@ApiTags('cards')
@Controller('api/defects/:id')
export class CardsController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly cards: CardsService,
    private readonly seconds: SecondPersons,
  ) {}

  @Get('cards')
  @ApiOperation({ summary: 'Work cards that were started for the defect, and those that may be.' })
  @ApiOkResponse({ schema: ref('CardsOfDefect') })
  list(@CurrentSession() session: Session, @Param('id', ID) id: string): Promise<object> {
    return this.store.withOperator(session.operatorId, session.personId, (tx) => this.cards.ofDefect(tx, id));
  }

  @Get('cards/:work')
  @ApiOperation({
    summary: 'The work on one card: its steps, what is counted out, what is missing. ETag of the defect.',
  })
  @ApiOkResponse({ schema: ref('CardWorkView') })
  async one(
    @CurrentSession() session: Session,
    @Param('id', ID) id: string,
    @Param('work', ID) work: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<object> {
    const { operatorId, personId } = session;
    const view = await this.store.withOperator(operatorId, personId, (tx) => this.cards.view(tx, id, work));
    void reply.header('etag', etag(view.version));
    return view.body;
  }

  @Post('cards')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Start a work card. Until it is signed or stopped the aircraft may not fly.' })
  start(@Calling() calling: Called, @Body() body: Bodies.StartCardBody): Promise<object> {
    return this.cards.start(calling, calling.id, body);
  }

  @Post('card-steps')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({
    summary: 'Do, begin or end a step of a card. It needs no secret, and an authorisation that covers it.',
  })
  step(@Calling() calling: Called, @Body() body: Bodies.StepBody): Promise<object> {
    return this.cards.step(calling, calling.id, body);
  }

  @Post('card-seconds')
  @HttpCode(200)
  @ApiOkResponse({ schema: ref('PasskeyAsked') })
  @ApiOperation({
    summary: 'What the browser is asked for, so that the second person of a step signs with a passkey of their own.',
  })
  askSecond(@Calling() calling: Called, @Body() body: Bodies.SecondAskedBody): Promise<object> {
    return this.seconds.ask(calling, body);
  }

  @Post('card-inspections')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({
    summary: 'Sign an independent inspection on a card, by another person than whoever did the steps.',
  })
  inspect(@Calling() calling: Called, @Body() body: Bodies.InspectionBody): Promise<object> {
    return this.cards.inspect(calling, calling.id, body);
  }

  @Post('card-signatures')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Sign a card: every step done, everything accounted for.' })
  sign(@Calling() calling: Called, @Body() body: Bodies.CardSignatureBody): Promise<object> {
    return this.cards.sign(calling, calling.id, body);
  }

  @Post('card-stops')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Stop a card with nothing of it left on the aircraft.' })
  stop(@Calling() calling: Called, @Body() body: Bodies.CardStopBody): Promise<object> {
    return this.cards.stop(calling, calling.id, body);
  }
}
