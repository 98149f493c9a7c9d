import { Controller, Get, Param, Res } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiProduces, ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { ID } from '../http/id.pipe.js';
import { CurrentSession, Roles, type Session } from '../http/session.js';
import { attached } from '../record/attached.js';
import { MAY_EXPORT } from '../record/may-export.js';
import { DocumentsService, type Printed } from './documents.service.js';

/** Histories to be printed. */
@ApiTags('documents')
@Controller('api')
@Roles(...MAY_EXPORT)
export class DocumentsController {
  constructor(private readonly documents: DocumentsService) {}

  @Get('aircraft/:id/history.pdf')
  @ApiOperation({
    summary: 'The whole history of an aircraft as PDF, every signature with name, licence, role and time.',
  })
  @ApiProduces('application/pdf')
  @ApiOkResponse({ schema: { type: 'string', format: 'binary' } })
  async ofAircraft(
    @CurrentSession() session: Session,
    @Param('id', ID) id: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    sendPdf(reply, await this.documents.history(session, { aircraft: id }));
  }

  @Get('defects/:id/history.pdf')
  @ApiOperation({
    summary: 'The whole history of a defect as PDF, every signature with name, licence, role and time.',
  })
  @ApiProduces('application/pdf')
  @ApiOkResponse({ schema: { type: 'string', format: 'binary' } })
  async ofDefect(
    @CurrentSession() session: Session,
    @Param('id', ID) id: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    sendPdf(reply, await this.documents.history(session, { defect: id }));
  }
}

export function sendPdf(reply: FastifyReply, { name, bytes }: Printed): void {
  attached(reply, name, 'pdf');
  void reply.type('application/pdf').send(bytes);
}
