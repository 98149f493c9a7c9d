import { Body, Controller, HttpCode, Inject, Post } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Store } from '#store';
import { checkBody } from '../http/body-hygiene.js';
import { CurrentSession, type Session } from '../http/session.js';
import { STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { SwapBody } from './swap.body.js';
import { SwapService } from './swap.service.js';

@ApiTags('fleet')
@Controller('api/fleet')
export class SwapController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly swaps: SwapService,
  ) {}

  @Post('swap')
  @HttpCode(200)
  @ApiOperation({
    summary: 'Could the aircraft exchange rotations so that all flights may be flown? Nothing is stored.',
  })
  @ApiOkResponse({ schema: ref('SwapProposal') })
  swap(@CurrentSession() session: Session, @Body() body: SwapBody): Promise<object> {
    checkBody(body);
    return this.store.withOperator(session.operatorId, session.personId, (tx) => this.swaps.propose(tx, body));
  }
}
