import { Body, Controller, Delete, Get, HttpCode, Inject, Post, Req, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Store } from '#store';
import { type Called, Calling } from '../../http/called.js';
import { CurrentSession, type Session } from '../../http/session.js';
import { STORE } from '../../http/tokens.js';
import { ref } from '../../openapi/shape.js';
import { AddressesService } from './addresses.service.js';
import { AddAddressBody, TellCodeBody } from './bodies.js';
import { ConfirmationsService } from './confirmations.service.js';
import { RemindersService } from './reminders.service.js';

const KEY = ApiHeader({ name: 'Idempotency-Key', required: true, description: 'A fresh UUID for each request.' });

/** Where reminders go, and what became of them. */
@ApiTags('watch')
@Controller('api')
export class RemindersController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly reminders: RemindersService,
    private readonly addresses: AddressesService,
    private readonly confirmations: ConfirmationsService,
  ) {}

  @Get('reminders')
  @ApiOperation({
    summary: 'Where reminders go, what was sent, and what could not be delivered: to you and to the operator.',
  })
  @ApiOkResponse({ schema: ref('Reminders') })
  list(@CurrentSession() session: Session): Promise<object> {
    return this.store.withOperator(session.operatorId, session.personId, (tx) => this.reminders.view(tx, session));
  }

  @Post('reminder-addresses')
  @KEY
  @ApiOperation({
    summary: 'Enter a mailbox or an endpoint. The secret of an endpoint is told with this answer alone.',
  })
  @ApiCreatedResponse({ schema: ref('ReminderAddressEntered') })
  add(
    @CurrentSession() session: Session,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
    @Body() body: AddAddressBody,
  ): Promise<object> {
    return this.addresses.add({ session, request, reply }, body);
  }

  @Delete('reminder-addresses/:id')
  @KEY
  @ApiOperation({ summary: 'Turn an address off: nothing is sent there from then on.' })
  @ApiOkResponse({ schema: ref('ReminderAddressEnded') })
  end(@Calling() calling: Called): Promise<object> {
    return this.addresses.end(calling, calling.id);
  }

  @Post('reminder-addresses/:id/code')
  @HttpCode(200)
  @KEY
  @ApiOperation({ summary: 'Send another code to a mailbox that is not confirmed.' })
  @ApiOkResponse({ schema: ref('ReminderAddressConfirmed') })
  askCode(@Calling() calling: Called): Promise<object> {
    return this.confirmations.ask(calling, calling.id);
  }

  @Post('reminder-addresses/:id/confirmation')
  @HttpCode(200)
  @KEY
  @ApiOperation({ summary: 'Tell the code that was sent to a mailbox: reminders go there from then on.' })
  @ApiOkResponse({ schema: ref('ReminderAddressConfirmed') })
  confirm(@Calling() calling: Called, @Body() body: TellCodeBody): Promise<object> {
    return this.confirmations.tell(calling, calling.id, body.code);
  }

  @Post('reminder-addresses/:id/secret')
  @KEY
  @ApiOperation({ summary: 'A new secret for an endpoint; the one before signs beside it for a day.' })
  @ApiCreatedResponse({ schema: ref('ReminderAddressEntered') })
  renew(@Calling() calling: Called): Promise<object> {
    return this.addresses.renewSecret(calling, calling.id);
  }
}
