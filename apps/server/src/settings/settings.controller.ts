import { Body, Controller, Get, HttpCode, Inject, Post, Put, Req, Res } from '@nestjs/common';
import { ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Store } from '#store';
import { checkBody } from '../http/body-hygiene.js';
import { etag } from '../http/headers.js';
import { CurrentSession, Roles, type Session } from '../http/session.js';
import { STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { ChangeSettingsBody, PreviewSettingsBody } from './bodies.js';
import { SettingsService } from './settings.service.js';

@ApiTags('settings')
@Controller('api/settings')
export class SettingsController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly settings: SettingsService,
  ) {}

  @Get()
  @ApiOperation({ summary: 'What the operator settled: each value with its source, and its own with the reason.' })
  @ApiOkResponse({ schema: ref('SettingsView') })
  async view(@CurrentSession() session: Session, @Res({ passthrough: true }) reply: FastifyReply): Promise<object> {
    const view = await this.store.withOperator(session.operatorId, session.personId, (tx) => this.settings.view(tx));
    void reply.header('etag', etag(view.version));
    return view.body;
  }

  @Post('preview')
  @HttpCode(200)
  @Roles('quality', 'administrator')
  @ApiOperation({ summary: 'Which open deadlines and answers would read otherwise. Nothing is stored.' })
  @ApiOkResponse({ schema: ref('SettingsPreview') })
  preview(@CurrentSession() session: Session, @Body() body: PreviewSettingsBody): Promise<object> {
    checkBody(body);
    return this.store.withOperator(session.operatorId, session.personId, (tx) =>
      this.settings.preview(tx, body.changes),
    );
  }

  @Put()
  @Roles('quality', 'administrator')
  @ApiHeader({ name: 'Idempotency-Key', required: true, description: 'A fresh UUID for each change.' })
  @ApiHeader({ name: 'If-Match', required: true, description: 'ETag of the settings as they were read.' })
  @ApiOperation({
    summary: 'Choose a preset or settle own values, each with a reason; signed where something open reads otherwise.',
  })
  @ApiOkResponse({ schema: ref('SettingsView') })
  change(
    @CurrentSession() session: Session,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
    @Body() body: ChangeSettingsBody,
  ): Promise<object> {
    return this.settings.change({ session, request, reply }, body);
  }
}
