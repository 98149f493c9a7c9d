import { Controller, Get, Inject } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Store } from '#store';
import { CurrentSession, type Session } from '../http/session.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { DefectViews } from './defect-views.service.js';

@ApiTags('defects')
@Controller('api/repeats')
export class RepeatsController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    private readonly views: DefectViews,
  ) {}

  @Get()
  @ApiOperation({ summary: 'Repeated work of all open items: what is owed next, and what was missed.' })
  @ApiOkResponse({ schema: ref('FleetRepeats') })
  list(@CurrentSession() session: Session): Promise<object> {
    return this.store.withOperator(session.operatorId, session.personId, async (tx) => ({
      at: this.now(),
      repeats: await this.views.repeats(tx),
    }));
  }
}
