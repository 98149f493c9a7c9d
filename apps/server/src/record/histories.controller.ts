import { Controller, Get, Param, Res } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { ID } from '../http/id.pipe.js';
import { CurrentSession, Roles, type Session } from '../http/session.js';
import { ref } from '../openapi/shape.js';
import { attached } from './attached.js';
import { ExportsService } from './exports.service.js';
import { MAY_EXPORT } from './may-export.js';

/** Whole histories as files that anybody can check. */
@ApiTags('record')
@Controller('api')
@Roles(...MAY_EXPORT)
export class HistoriesController {
  constructor(private readonly exports: ExportsService) {}

  @Get('aircraft/:id/history.json')
  @ApiOperation({ summary: 'The whole history of an aircraft, entry by entry, with the proofs.' })
  @ApiOkResponse({ schema: ref('RecordHistory') })
  ofAircraft(
    @CurrentSession() session: Session,
    @Param('id', ID) id: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<object> {
    return this.history(session, { aircraft: id }, reply);
  }

  @Get('defects/:id/history.json')
  @ApiOperation({ summary: 'The whole history of a defect, entry by entry, with the proofs.' })
  @ApiOkResponse({ schema: ref('RecordHistory') })
  ofDefect(
    @CurrentSession() session: Session,
    @Param('id', ID) id: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<object> {
    return this.history(session, { defect: id }, reply);
  }

  private async history(
    session: Session,
    of: Parameters<ExportsService['history']>[1],
    reply: FastifyReply,
  ): Promise<object> {
    const history = await this.exports.history(session, of);
    attached(reply, `history ${history.about.subject}`, 'json');
    return history;
  }
}
