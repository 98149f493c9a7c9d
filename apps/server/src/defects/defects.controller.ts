import { Body, Controller, Get, HttpCode, Inject, Param, Post, Query, Req, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Store } from '#store';
import { type Called, Calling } from '../http/called.js';
import { etag } from '../http/headers.js';
import { ID } from '../http/id.pipe.js';
import { CurrentSession, type Session } from '../http/session.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import * as Bodies from './bodies.js';
import * as Leaving from './leaving-bodies.js';
import * as Releasing from './releasing-bodies.js';
import { DefectViews } from './defect-views.service.js';
import { DefectsService } from './defects.service.js';
import { RowChangesService } from './row-changes.service.js';
import { LeavingService } from './leaving.service.js';
import { ReleasingService } from './releasing.service.js';
import { StatementQuery } from './statements.js';

const KEY = ApiHeader({ name: 'Idempotency-Key', required: true, description: 'A fresh UUID for each act.' });
const SEEN = ApiHeader({ name: 'If-Match', required: true, description: 'ETag of the defect as it was read.' });
const DONE = ApiOkResponse({ schema: ref('ActDone') });

@ApiTags('defects')
@Controller('api/defects')
export class DefectsController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    private readonly defects: DefectsService,
    private readonly views: DefectViews,
  ) {}

  @Get()
  @ApiOperation({ summary: 'Open defects of the fleet, those that end first at the top.' })
  @ApiOkResponse({ schema: ref('DefectList') })
  list(@CurrentSession() session: Session): Promise<object> {
    return this.store.withOperator(session.operatorId, session.personId, async (tx) => ({
      at: this.now(),
      defects: await this.views.open(tx, await tx.aircraft.list()),
    }));
  }

  @Post()
  @KEY
  @ApiOperation({ summary: 'Write up a defect. Until it is answered the aircraft may not fly.' })
  @ApiCreatedResponse({ schema: ref('ActDone') })
  writeUp(
    @CurrentSession() session: Session,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
    @Body() body: Bodies.WriteUpBody,
  ): Promise<object> {
    return this.defects.writeUp({ session, request, reply }, body);
  }

  @Get(':id')
  @ApiOperation({ summary: 'One defect with its history.' })
  @ApiOkResponse({ schema: ref('DefectView') })
  async one(
    @CurrentSession() session: Session,
    @Param('id', ID) id: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<object> {
    const view = await this.store.withOperator(session.operatorId, session.personId, (tx) => this.views.view(tx, id));
    void reply.header('etag', etag(view.version));
    return view.body;
  }

  @Get(':id/statement')
  @ApiOperation({ summary: 'The statement that a signature would certify. Show it; send it back word for word.' })
  @ApiOkResponse({ schema: ref('Statement') })
  statement(
    @CurrentSession() session: Session,
    @Param('id', ID) id: string,
    @Query() query: StatementQuery,
  ): Promise<object> {
    return this.store.withOperator(session.operatorId, session.personId, (tx) =>
      this.views.statement(tx, id, query, session.personId),
    );
  }
}

/** The acts on a defect. Each is signed, but for naming the failed item. */
@ApiTags('acts')
@Controller('api/defects/:id')
export class ActsController {
  constructor(
    private readonly defects: DefectsService,
    private readonly rows: RowChangesService,
    private readonly releasing: ReleasingService,
    private readonly leaving: LeavingService,
  ) {}

  @Post('identification')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Name the failed item: MEL entry and unit.' })
  identify(@Calling() calling: Called, @Body() body: Bodies.IdentifyBody): Promise<object> {
    return this.defects.identify(calling, calling.id, body);
  }

  @Post('deferral')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Defer on an MEL row or another basis. The clock runs from the day in the log.' })
  defer(@Calling() calling: Called, @Body() body: Bodies.DeferBody): Promise<object> {
    return this.defects.defer(calling, calling.id, body);
  }

  @Post('row')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Change the row that a deferral stands on. It is work to be signed; the clock is kept.' })
  changeRow(@Calling() calling: Called, @Body() body: Bodies.ChangeRowBody): Promise<object> {
    return this.rows.change(calling, calling.id, body);
  }

  @Post('procedures')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Sign an (M) or (O) procedure and what it leaves altered on the aircraft.' })
  signProcedure(@Calling() calling: Called, @Body() body: Bodies.ProcedureBody): Promise<object> {
    return this.defects.signProcedure(calling, calling.id, body);
  }

  @Post('placard')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Sign that the placard is fitted.' })
  fitPlacard(@Calling() calling: Called, @Body() body: Bodies.PlacardBody): Promise<object> {
    return this.defects.fitPlacard(calling, calling.id, body);
  }

  @Post('undone')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Sign that things left on the aircraft are undone.' })
  undo(@Calling() calling: Called, @Body() body: Bodies.UndoBody): Promise<object> {
    return this.defects.undo(calling, calling.id, body);
  }

  @Post('rectification')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Sign the work done on the defect.' })
  rectify(@Calling() calling: Called, @Body() body: Bodies.RectifyBody): Promise<object> {
    return this.defects.rectify(calling, calling.id, body);
  }

  @Post('test')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Sign a test after the work.' })
  test(@Calling() calling: Called, @Body() body: Bodies.TestBody): Promise<object> {
    return this.defects.test(calling, calling.id, body);
  }

  @Post('inspection')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Sign an independent inspection, by another person than the one who did the work.' })
  inspect(@Calling() calling: Called, @Body() body: Releasing.InspectBody): Promise<object> {
    return this.releasing.inspect(calling, calling.id, body);
  }

  @Post('restoration')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Sign that the normal configuration is restored and nothing is left on the aircraft.' })
  restore(@Calling() calling: Called, @Body() body: Bodies.RestoreBody): Promise<object> {
    return this.defects.restore(calling, calling.id, body);
  }

  @Post('release')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Release to service; closes the defect.' })
  release(@Calling() calling: Called, @Body() body: Releasing.ReleaseBody): Promise<object> {
    return this.releasing.release(calling, calling.id, body);
  }

  @Post('verification')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Sign the general verification: tools accounted for, panels closed, register checked.' })
  verify(@Calling() calling: Called, @Body() body: Releasing.VerificationBody): Promise<object> {
    return this.releasing.verify(calling, calling.id, body);
  }

  @Post('left')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Sign that things are left altered on the aircraft for this defect.' })
  leave(@Calling() calling: Called, @Body() body: Leaving.LeftAlteredBody): Promise<object> {
    return this.leaving.leave(calling, calling.id, body);
  }

  @Post('swap')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Sign that the failed part was swapped to another position. The clock runs on.' })
  swapUnit(@Calling() calling: Called, @Body() body: Leaving.SwapUnitBody): Promise<object> {
    return this.leaving.swapUnit(calling, calling.id, body);
  }

  @Post('joining')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Answer the write-up: another entry of an item that is open under deferral already.' })
  join(@Calling() calling: Called, @Body() body: Leaving.JoinBody): Promise<object> {
    return this.leaving.join(calling, calling.id, body);
  }

  @Post('no-fault-found')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Answer the write-up: checked, no fault found.' })
  findNoFault(@Calling() calling: Called, @Body() body: Bodies.AnswerBody): Promise<object> {
    return this.defects.findNoFault(calling, calling.id, body);
  }

  @Post('raised-in-error')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Answer the write-up: it was raised in error.' })
  raiseInError(@Calling() calling: Called, @Body() body: Bodies.AnswerBody): Promise<object> {
    return this.defects.raiseInError(calling, calling.id, body);
  }
}
