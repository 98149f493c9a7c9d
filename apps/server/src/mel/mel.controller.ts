import { Body, Controller, Get, HttpCode, Inject, Param, Post, Query, Req, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiHeader, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { MEL_SCHEMA } from '#mel';
import type { Store, Tx } from '#store';
import { Text } from '../http/fields.js';
import { ID } from '../http/id.pipe.js';
import { once } from '../http/once.js';
import { CurrentSession, Open, Roles, type Session } from '../http/session.js';
import { STORE } from '../http/tokens.js';
import { ref } from '../openapi/shape.js';
import { MelService } from './mel.service.js';

export class EntriesQuery {
  @Text(200, { description: 'Number, words, chapter or fault message.' })
  q!: string;
}

export class MelFileBody {
  @Text(200, { description: 'Name of the file, for errors.', example: 'mel.yaml' })
  file!: string;

  @Text(5_000_000, { description: 'The text of the file, YAML or JSON.' })
  text!: string;
}

@ApiTags('mel')
@Controller('api')
export class MelController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly mel: MelService,
  ) {}

  @Get('mel')
  @ApiOperation({ summary: 'The revisions that were loaded.' })
  @ApiOkResponse({ schema: ref('MelRevisions') })
  revisions(@CurrentSession() session: Session): Promise<object> {
    return this.read(session, (tx) => this.mel.revisions(tx));
  }

  @Post('mel')
  @HttpCode(201)
  @Roles('mel-engineer')
  @ApiHeader({ name: 'Idempotency-Key', required: true })
  @ApiOperation({ summary: 'Load a revision. A bad file loads nothing and every error is named.' })
  @ApiCreatedResponse({ schema: ref('MelLoaded') })
  load(
    @CurrentSession() session: Session,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
    @Body() body: MelFileBody,
  ): Promise<object> {
    return once(this.store, session, request, reply, async (tx) => ({
      status: 201,
      body: await this.mel.load(tx, session, body.file, body.text),
    }));
  }

  @Open()
  @Get('mel/schema')
  @ApiOperation({ summary: 'JSON Schema 2020-12 of the MEL content format.' })
  schema(): object {
    return MEL_SCHEMA;
  }

  @Get('aircraft/:id/entries')
  @ApiOperation({ summary: 'Find entries by number, words, chapter or fault message.' })
  @ApiOkResponse({ schema: ref('EntryHits') })
  search(
    @CurrentSession() session: Session,
    @Param('id', ID) id: string,
    @Query() query: EntriesQuery,
  ): Promise<object> {
    return this.read(session, (tx) => this.mel.search(tx, id, query.q));
  }

  @Get('aircraft/:id/entries/:number')
  @ApiOperation({ summary: 'One entry as it reads for this aircraft.' })
  @ApiOkResponse({ schema: ref('EntryView') })
  entry(
    @CurrentSession() session: Session,
    @Param('id', ID) id: string,
    @Param('number') number: string,
  ): Promise<object> {
    return this.read(session, (tx) => this.mel.entry(tx, id, number));
  }

  private read<T>(session: Session, work: (tx: Tx) => Promise<T>): Promise<T> {
    return this.store.withOperator(session.operatorId, session.personId, work);
  }
}
