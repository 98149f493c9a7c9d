import { Controller, Get, Inject, Param, Query, Req, Res } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiProduces, ApiTags } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { OneOf } from '../http/fields.js';
import { ID } from '../http/id.pipe.js';
import { CurrentSession, type Session } from '../http/session.js';
import { originOf, PUBLIC_URL } from '../people/site-address.js';
import { sendPdf } from './documents.controller.js';
import { type LabelSize, PlacardsService } from './placards.service.js';

export class LabelQuery {
  @OneOf(['a4', 'roll'], { description: 'A sheet of A4, or a roll 62 mm wide. A4 when absent.', optional: true })
  size?: LabelSize;
}

@ApiTags('documents')
@Controller('api/defects/:id/placards.pdf')
export class PlacardsController {
  constructor(
    private readonly placards: PlacardsService,
    @Inject(PUBLIC_URL) private readonly publicUrl: string | null,
  ) {}

  @Get()
  @ApiOperation({ summary: 'The placards of a deferral to be stuck on, each with a code that opens it.' })
  @ApiProduces('application/pdf')
  @ApiOkResponse({ schema: { type: 'string', format: 'binary' } })
  async labels(
    @CurrentSession() session: Session,
    @Param('id', ID) id: string,
    @Query() { size = 'a4' }: LabelQuery,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const { origin } = originOf(this.publicUrl, request);
    sendPdf(reply, await this.placards.labels(session, id, size, origin));
  }
}
