import { Controller, Headers, type MessageEvent, Sse } from '@nestjs/common';
import { ApiHeader, ApiOkResponse, ApiOperation, ApiProduces, ApiTags } from '@nestjs/swagger';
import type { Observable } from 'rxjs';
import { Problem } from '../http/problem.js';
import { CurrentSession, type Session } from '../http/session.js';
import { LiveService } from './live.service.js';

const EVENTS = `Server-sent events: \`from\` (where it begins), \`change\` ({ number, aircraft, what }), \`behind\` (too much was
missed: read everything again), \`still-here\`. The id of an event is its number in the record.`;

@ApiTags('record')
@Controller('api/events')
export class LiveController {
  constructor(private readonly live: LiveService) {}

  @Sse()
  @ApiOperation({ summary: 'That something was done, as it is sealed in the record.' })
  @ApiHeader({
    name: 'Last-Event-ID',
    required: false,
    description: 'The number seen last: what followed is told first.',
  })
  @ApiProduces('text/event-stream')
  @ApiOkResponse({ description: EVENTS, schema: { type: 'string' } })
  follow(@CurrentSession() session: Session, @Headers('last-event-id') seen?: string): Observable<MessageEvent> {
    return this.live.follow(session, numberOf(seen));
  }
}

function numberOf(seen: string | undefined): number | null {
  if (seen === undefined || seen === '') return null;
  if (/^\d{1,15}$/.test(seen)) return Number(seen);
  const reason = `"${seen.slice(0, 40)}" is no number of the record`;
  throw new Problem('invalid-input', `Last-Event-ID: ${reason}.`, {
    errors: [{ pointer: '/Last-Event-ID', reason }],
  });
}
