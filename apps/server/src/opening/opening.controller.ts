import { Controller, Get, Inject } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Store } from '#store';
import { CurrentSession, Open, type Session } from '../http/session.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import { list, object, oneOf, ref, type Shape, text, yesNo } from '../openapi/shape.js';
import { ALL_ROLES } from '../people/account-bodies.js';
import { stepsOf } from './what-is-missing.js';

export const OPENING_SHAPES: Record<string, Shape> = {
  Opening: object({
    steps: list(
      object({
        step: text('Which.'),
        done: yesNo('Whether it was taken.'),
        what: text('What is to be done.'),
        by: list(oneOf(ALL_ROLES, 'Who does it.')),
        page: text('Address of the page for it.'),
      }),
    ),
  }),
  Anybody: object({ anybody: yesNo('False while no operator was made on this server.') }),
};

@ApiTags('people')
@Controller('api/opening')
export class OpeningController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
  ) {}

  @Get()
  @ApiOperation({ summary: 'What a new operator needs before its first aircraft can be judged, step by step.' })
  @ApiOkResponse({ schema: ref('Opening') })
  steps(@CurrentSession() { operatorId, personId }: Session): Promise<object> {
    return this.store.withOperator(operatorId, personId, async (tx) => ({ steps: await stepsOf(tx, this.now()) }));
  }

  @Open()
  @Get('anybody')
  @ApiOperation({ summary: 'Whether anybody can sign in here at all, for the page of a fresh server.' })
  @ApiOkResponse({ schema: ref('Anybody') })
  async anybody(): Promise<object> {
    return { anybody: (await this.store.operatorsServed()).length > 0 };
  }
}
