import { Body, Controller, Get, HttpCode, Inject, Param, Post, Query, Res } from '@nestjs/common';
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
import { RegisterService } from './register.service.js';
import { RegisterViews } from './register-views.service.js';
import { RegisterStatementQuery } from './statements.js';

const KEY = ApiHeader({ name: 'Idempotency-Key', required: true, description: 'A fresh UUID for each act.' });
const SEEN = ApiHeader({ name: 'If-Match', required: true, description: 'ETag of the register as it was read.' });
const DONE = ApiOkResponse({ schema: ref('RegisterDone') });

/** What is left on an aircraft, whoever owns it. */
@ApiTags('register')
@Controller('api/aircraft/:id/left')
export class RegisterController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly register: RegisterService,
    private readonly views: RegisterViews,
  ) {}

  @Get()
  @ApiOperation({ summary: 'Everything left on the aircraft, what it belongs to, and what was undone last.' })
  @ApiOkResponse({ schema: ref('RegisterView') })
  async view(
    @CurrentSession() session: Session,
    @Param('id', ID) id: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<object> {
    const { operatorId, personId } = session;
    const view = await this.store.withOperator(operatorId, personId, (tx) => this.views.view(tx, id));
    void reply.header('etag', etag(view.version));
    return view;
  }

  @Get('statement')
  @ApiOperation({ summary: 'The statement that a signature would certify. Show it; send it back word for word.' })
  @ApiOkResponse({ schema: ref('Statement') })
  statement(
    @CurrentSession() session: Session,
    @Param('id', ID) id: string,
    @Query() query: RegisterStatementQuery,
  ): Promise<object> {
    const { operatorId, personId } = session;
    return this.store.withOperator(operatorId, personId, (tx) => this.views.statement(tx, id, query));
  }

  @Post('found')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Say that a thing was found on the aircraft that nobody owns. It may not fly with it.' })
  find(@Calling() calling: Called, @Body() body: Bodies.FoundBody): Promise<object> {
    return this.register.find(calling, body);
  }

  @Post('fitted')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Sign that things are left altered under a modification, a directive or a permit.' })
  fit(@Calling() calling: Called, @Body() body: Bodies.FittedBody): Promise<object> {
    return this.register.fit(calling, body);
  }

  @Post('removed')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Sign that things which no open item owns are undone.' })
  remove(@Calling() calling: Called, @Body() body: Bodies.ThingsBody): Promise<object> {
    return this.register.remove(calling, body);
  }

  @Post('seen')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Sign, as another person, that things are seen to be undone.' })
  see(@Calling() calling: Called, @Body() body: Bodies.ThingsBody): Promise<object> {
    return this.register.see(calling, body);
  }

  @Post('moves')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Sign that things belong to another owner from now on, or to another one as well.' })
  move(@Calling() calling: Called, @Body() body: Bodies.MoveBody): Promise<object> {
    return this.register.move(calling, body);
  }

  @Post('ended-documents')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Sign that a document is no longer in force: what is under it has no owner.' })
  end(@Calling() calling: Called, @Body() body: Bodies.EndedBody): Promise<object> {
    return this.register.end(calling, body);
  }

  @Post('corrections')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Sign that a place or number is mistyped. It stands until a second person has looked.' })
  correct(@Calling() calling: Called, @Body() body: Bodies.CorrectionBody): Promise<object> {
    return this.register.askCorrection(calling, body);
  }

  @Post('second-looks')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Sign, as another person who looked at the aircraft, that a correction is right.' })
  look(@Calling() calling: Called, @Body() body: Bodies.SecondLookBody): Promise<object> {
    return this.register.look(calling, body);
  }

  @Post('as-written')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({
    summary:
      'Sign that a correction which waits is not made: as another person who looked, or as the one who asked and takes it back.',
  })
  stay(@Calling() calling: Called, @Body() body: Bodies.AsWrittenBody): Promise<object> {
    return this.register.stay(calling, body);
  }

  @Post('hand-overs')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Hand the aircraft over to the next shift: the list, signed by who gives.' })
  give(@Calling() calling: Called, @Body() body: Bodies.HandOverBody): Promise<object> {
    return this.register.give(calling, body);
  }

  @Post('hand-overs-taken')
  @HttpCode(200)
  @KEY
  @SEEN
  @DONE
  @ApiOperation({ summary: 'Take over a hand-over: the same list, signed by who takes.' })
  take(@Calling() calling: Called, @Body() body: Bodies.TakeOverBody): Promise<object> {
    return this.register.take(calling, body);
  }
}
