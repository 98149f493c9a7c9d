import { Controller, Get, Inject, Res } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiProduces, ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import type { Store } from '#store';
import { DefectViews } from '../defects/defect-views.service.js';
import type { DefectLine } from '../defects/views.js';
import { CurrentSession, type Session } from '../http/session.js';
import { STORE } from '../http/tokens.js';
import { attached } from './attached.js';
import { baseTime } from './base-time.js';
import { csv } from './csv.js';

const HEADINGS = [
  'number',
  'aircraft',
  'entry',
  'title',
  'units',
  'description',
  'state',
  'basis',
  'recorded in the log',
  'last day',
  'ends before',
  'what is left',
  'signatures owed',
  'placard',
];

/** What the pages list, for a spreadsheet. */
@ApiTags('defects')
@Controller('api/defects.csv')
export class OpenItemsController {
  constructor(
    @Inject(STORE) private readonly store: Store,
    private readonly views: DefectViews,
  ) {}

  @Get()
  @ApiOperation({
    summary: 'Open items as CSV. A text that a spreadsheet would carry out as a formula has an apostrophe before it.',
  })
  @ApiProduces('text/csv')
  @ApiOkResponse({ schema: { type: 'string' } })
  async list(@CurrentSession() session: Session, @Res() reply: FastifyReply): Promise<void> {
    const text = await this.store.withOperator(session.operatorId, session.personId, async (tx) => {
      const { base } = await tx.operators.current();
      const lines = await this.views.open(tx, await tx.aircraft.list());
      return csv([HEADINGS, ...lines.map((line) => cells(line, base))]);
    });
    attached(reply, 'open items', 'csv');
    void reply.type('text/csv; charset=utf-8').send(text);
  }
}

function cells(line: DefectLine, base: string): string[] {
  const { deadline, work, placard } = line;
  return [
    line.number,
    line.registration,
    line.entry ?? '',
    line.title,
    line.units.join(' '),
    line.description,
    line.state,
    line.basis ?? '',
    baseTime(line.recordedAt, base),
    deadline?.lastDay ?? '',
    deadline?.endsAt ?? '',
    deadline?.words ?? '',
    String(work.filter(({ signed }) => signed === null).length),
    placard === null ? '' : `${placard.fitted ? 'fitted' : 'not fitted'}: ${placard.text}`,
  ];
}
