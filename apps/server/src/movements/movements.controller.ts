import { Body, Controller, Get, HttpCode, Inject, Post, Query, Req, Res } from '@nestjs/common';
import {
  ApiBody,
  ApiConsumes,
  ApiExtraModels,
  ApiHeader,
  ApiOkResponse,
  ApiOperation,
  ApiTags,
  getSchemaPath,
} from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Store } from '#store';
import { type Called, Calling } from '../http/called.js';
import { once } from '../http/once.js';
import { Problem } from '../http/problem.js';
import { CurrentSession, Roles, type Session } from '../http/session.js';
import { CLOCK, type Clock, STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { MendBody, MovementsBody, TrayQuery } from './bodies.js';
import { IntakeService } from './intake.service.js';
import { SKEW_MS } from './sort-out.js';
import { TrayService } from './tray.service.js';
import { receivedView, trayLines } from './views.js';

const KEY = ApiHeader({ name: 'Idempotency-Key', required: true, description: 'A fresh UUID for each delivery.' });

@ApiTags('movements')
@Controller('api/movements')
export class MovementsController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    @Inject(CLOCK) private readonly now: Clock,
    private readonly intake: IntakeService,
    private readonly tray: TrayService,
  ) {}

  @Post()
  @HttpCode(200)
  @Roles('dispatcher', 'maintenance-control', 'engineer')
  @KEY
  @ApiConsumes('text/plain', 'application/json')
  @ApiExtraModels(MovementsBody)
  @ApiBody({ schema: { oneOf: [{ type: 'string' }, { $ref: getSchemaPath(MovementsBody) }] } })
  @ApiOperation({ summary: 'Take movement messages in, one or many, and tell what they changed.' })
  @ApiOkResponse({ schema: ref('MovementsReceived') })
  receive(
    @CurrentSession() session: Session,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
    @Body() body: MovementsBody,
  ): Promise<object> {
    return once(this.store, session, request, reply, async (tx) => {
      const { text, receivedAt = this.now() } = body;
      this.refuseFuture(receivedAt);
      const cameBy = request.headers['content-type']?.startsWith('text/plain') ? 'text' : 'json';
      const messages = this.intake.read(text, receivedAt, await this.intake.reading(tx));
      await tx.movements.takeIntake();
      const received = await this.intake.receive(tx, session, { text, receivedAt, cameBy, mends: null }, messages);
      return { status: 200, body: await receivedView(tx, received, this.now()) };
    });
  }

  @Get('tray')
  @ApiOperation({ summary: 'What could not be read or settled and waits for a person, the oldest first.' })
  @ApiOkResponse({ schema: ref('MovementTray') })
  list(@CurrentSession() session: Session, @Query() { state = 'open' }: TrayQuery): Promise<object> {
    return this.store.withOperator(session.operatorId, session.personId, async (tx) => ({
      at: this.now(),
      entries: await trayLines(tx, await this.tray.list(tx, state)),
    }));
  }

  @Post('tray/:id/mended')
  @HttpCode(200)
  @Roles('dispatcher', 'maintenance-control', 'engineer')
  @KEY
  @ApiOperation({ summary: 'Send a corrected text, or say that it stays as it is. What came in stays readable.' })
  @ApiOkResponse({ schema: ref('MovementMended') })
  mend(@Calling() { session, request, reply, id }: Called, @Body() body: MendBody): Promise<object> {
    return once(this.store, session, request, reply, async (tx) => {
      const { received } = await this.tray.mend(tx, session, id, body);
      const at = this.now();
      return { status: 200, body: { at, id, received: received ? await receivedView(tx, received, at) : null } };
    });
  }

  private refuseFuture(receivedAt: string): void {
    if (Date.parse(receivedAt) <= Date.parse(this.now()) + SKEW_MS) return;
    const reason = `a receipt at ${receivedAt} has not come yet`;
    throw new Problem('invalid-input', reason, { errors: [{ pointer: '/receivedAt', reason }] });
  }
}
